package zones

import (
	"slices"
	"strings"
	"unicode"

	"example.org/turfplat/geo"
)

// A sward is turf of one grass as it was traced.
type sward struct {
	species string // as it was written first; "" = not stated
	ground  geo.Region
}

// plantZones gives zones of which nobody stated the grass that of the turf
// they lie on, else that of the site. A zone that lies on turf of several
// grasses is divided, unless nothing is applied there. One that an earlier
// division wrote stays as it was written, but where all turf is of one grass.
func (d *division) plantZones() error {
	swards, err := d.site.swards()
	if err != nil {
		return err
	}
	for _, z := range slices.Clone(d.zones) {
		if z.Species != "" || z.written && len(swards) > 1 {
			continue
		}
		parts, err := d.swardsOf(z, swards)
		if err != nil {
			return err
		}
		switch {
		case len(parts) == 1:
			d.zones[d.indexOf(z)].Species = parts[0].species
		case z.Apply:
			d.plant(z, parts)
		}
	}
	return nil
}

// swards gathers the ground of turf objects by their grass; where two overlap
// it is that of the smaller, as it is with covers. Without any grass that a
// turf object states they are one, of no ground: all is the site's.
func (s *Site) swards() ([]sward, error) {
	lawns := s.Of(Turf)
	if !slices.ContainsFunc(lawns, func(o *Object) bool { return o.statedSpecies() != "" }) {
		return []sward{{species: s.Species}}, nil
	}
	sortObjects(s.Frame, lawns)
	var swards []sward
	for i, o := range lawns {
		own, err := less(o.Ground, lawns[:i])
		if err != nil {
			return nil, err
		}
		species := o.statedSpecies()
		if species == "" {
			species = s.Species
		}
		at := slices.IndexFunc(swards, func(w sward) bool { return s.sameGrass(w.species, species) })
		if at < 0 {
			at = len(swards)
			swards = append(swards, sward{species: species})
		}
		if swards[at].ground, err = geo.Union(swards[at].ground, own); err != nil {
			return nil, err
		}
	}
	return swards, nil
}

// statedSpecies is the grass that the file gives an object.
func (o *Object) statedSpecies() string {
	species, _ := o.Feature.Properties.Text("species")
	return strings.TrimSpace(species)
}

// sameGrass reports whether two names are those of one grass.
func (s *Site) sameGrass(a, b string) bool {
	first, known := s.grasses.Find(a)
	second, both := s.grasses.Find(b)
	if known && both {
		return first.Name == second.Name
	}
	return strings.EqualFold(a, b)
}

// swardsOf divides the turf of a zone by its grass. What is too small or too
// narrow to be told apart, where two outlines hardly meet, goes with the grass
// beside it.
func (d *division) swardsOf(z Zone, swards []sward) ([]sward, error) {
	if len(swards) == 1 {
		return []sward{{swards[0].species, z.Region}}, nil
	}
	laid := []geo.Region{z.Region}
	for _, w := range swards {
		laid = append(laid, w.ground)
	}
	overlay, err := geo.Lay(laid...)
	if err != nil {
		return nil, err
	}
	defer overlay.Release()
	return d.tidied(swards, overlay.Partition(len(laid), func(holders []int) int {
		switch {
		case holders[0] != 0:
			return -1
		case len(holders) == 1: // a sliver between turf objects
			return len(swards)
		}
		return holders[1] - 1
	}))
}

// tidied gives each piece that is no sward of its own to the sward it lies
// along for the longest way; regions are those of swards, and last what none
// of them holds. A narrow piece that lies along no other sward stays with its
// own, a small one goes with the largest.
func (d *division) tidied(swards []sward, regions []geo.Region) ([]sward, error) {
	kept := make([][]geo.Region, len(swards))
	loose := make([][]geo.Region, len(regions))
	for i, r := range regions {
		for _, piece := range r.Pieces() {
			if i < len(swards) && d.site.meanWidth(piece) >= crossing && d.site.Frame.Area(piece) >= leastPart {
				kept[i] = append(kept[i], piece)
			} else {
				loose[i] = append(loose[i], piece)
			}
		}
	}
	firm := slices.Clone(kept)
	for i, pieces := range loose {
		for _, piece := range pieces {
			into := d.alongside(piece, firm)
			switch {
			case into >= 0:
			case i < len(swards) && d.site.Frame.Area(piece) >= leastPart:
				into = i
			default:
				into = d.site.largest(regions[:len(swards)])
			}
			kept[into] = append(kept[into], piece)
		}
	}
	return gathered(swards, kept)
}

// largest is which of several regions has the largest area.
func (s *Site) largest(regions []geo.Region) int {
	best := 0
	for i, r := range regions {
		if squareCentimetres(s.Frame.Area(r)) > squareCentimetres(s.Frame.Area(regions[best])) {
			best = i
		}
	}
	return best
}

// alongside is which of several grounds a piece lies along for the longest
// way; -1 if it lies along none.
func (d *division) alongside(piece geo.Region, grounds [][]geo.Region) int {
	best, longest := -1, geo.Length(0)
	for i, ground := range grounds {
		along := geo.Length(0)
		for _, r := range ground {
			along += d.site.Frame.Contact(piece, r, sliver)
		}
		if along > longest {
			best, longest = i, along
		}
	}
	return best
}

// gathered joins the pieces of each sward, and leaves out those of which there
// is nothing.
func gathered(swards []sward, pieces [][]geo.Region) ([]sward, error) {
	var parts []sward
	for i, own := range pieces {
		if len(own) == 0 {
			continue
		}
		ground, err := geo.Union(own...)
		if err != nil {
			return nil, err
		}
		parts = append(parts, sward{swards[i].species, ground})
	}
	return parts, nil
}

// plant puts the parts of a zone in its place, named by their grass; what has
// no grass that is known keeps the name.
func (d *division) plant(z Zone, parts []sward) {
	d.remove(z)
	for _, part := range parts {
		p := z
		p.Region, p.Species = part.ground, part.species
		if part.species != "" {
			p.ID, p.Name = z.ID+"-"+hyphened(part.species), z.Name+", "+part.species
		}
		p.ID = d.freshID(p.ID)
		d.zones = append(d.zones, p)
	}
}

// hyphened writes a name as part of an id.
func hyphened(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	return strings.Join(words, "-")
}
