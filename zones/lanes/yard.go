package lanes

import (
	"math"

	"example.org/turfplat/geo"
	"example.org/turfplat/zones"
)

// A Yard is a property as one who spreads sees it: the ground to be treated,
// and what stands in the way.
type Yard struct {
	Plots   []Plot
	Posts   []Post        // trunks and hazards, which lanes are bent around
	Covers  []zones.Cover // all other ground that something is known of
	Closed  []zones.Cover // that of it which is not walked on: buildings, pools, water, beds
	Fences  []geo.Line    // not walked through, but for the gates
	Outline []geo.Line    // not left, if that can be helped
	Start   []geo.XY      // where the walk may start; none = anywhere
	End     []geo.XY      // where it may end; none = anywhere
	Refills []geo.XY
}

// A Plot is turf that is treated as one.
type Plot struct {
	Zones   []zones.Zone // that it is made of
	Turf    geo.Region
	Contour *float64 // the angle, in radians from east, along which steep ground is walked
	ByHand  bool     // it is too steep to push a spreader over
}

// YardOf takes a yard from a plat: every zone on which something may be
// applied, those that are not walked along the contour as one plot. The walk
// starts where the site says, else at an access, and ends at an access, else at
// a refill point.
func YardOf(p *zones.Plat, practice Practice) (Yard, error) {
	return YardOn(p, practice, func(zones.Zone) bool { return true })
}

// YardOn takes a yard of some of the zones of a plat. The turf of others is
// ground that must get nothing, but may be walked on.
func YardOn(p *zones.Plat, practice Practice, treats func(zones.Zone) bool) (Yard, error) {
	s, near := p.Site, p.Ground.Traced.Inside.Bounds().Grown(vicinity)
	y := Yard{Posts: postsOf(s, near, practice), Refills: pointsOf(s, zones.Refill, near)}
	var level []zones.Zone
	for _, z := range p.Zones {
		switch contour := contourOf(z, practice); {
		case !z.Apply:
			y.Covers = append(y.Covers, zones.Cover{Kind: zones.Keepout, Region: z.Region})
		case !treats(z):
			y.Covers = append(y.Covers, zones.Cover{Kind: zones.Turf, Region: z.Region})
		case z.Slope > practice.HandSlope:
			y.Plots = append(y.Plots, Plot{Zones: []zones.Zone{z}, Turf: z.Region, ByHand: true})
		case contour != nil:
			y.Plots = append(y.Plots, Plot{Zones: []zones.Zone{z}, Turf: z.Region, Contour: contour})
		default:
			level = append(level, z)
		}
	}
	if len(level) > 0 {
		turf, err := geo.Union(regionsOf(level)...)
		if err != nil {
			return Yard{}, err
		}
		y.Plots = append([]Plot{{Zones: level, Turf: turf}}, y.Plots...)
	}
	for _, c := range p.Ground.Covers {
		switch c.Kind {
		case zones.Turf:
			continue
		case zones.Building, zones.Pool, zones.Water, zones.Bed:
			y.Closed = append(y.Closed, c)
		}
		y.Covers = append(y.Covers, c)
	}
	access := pointsOf(s, zones.Access, near)
	y.Start = firstOf(pointsOf(s, zones.Start, near), access)
	y.End = firstOf(access, y.Refills)
	y.Fences = fencesOf(s, near, access)
	for _, polygon := range p.Ground.Outline.Polygons() {
		for _, ring := range polygon.Rings() {
			y.Outline = append(y.Outline, opened(closed(ring), access)...)
		}
	}
	return y, nil
}

func regionsOf(list []zones.Zone) []geo.Region {
	regions := make([]geo.Region, len(list))
	for i, z := range list {
		regions[i] = z.Region
	}
	return regions
}

// zoneAt returns the id of the zone of a plot that holds a place.
func (p Plot) zoneAt(at geo.XY) string {
	for _, z := range p.Zones {
		if z.Region.Contains(at) {
			return z.ID
		}
	}
	return p.Zones[0].ID
}

// firstOf returns the first list that has any place.
func firstOf(lists ...[]geo.XY) []geo.XY {
	for _, l := range lists {
		if len(l) > 0 {
			return l
		}
	}
	return nil
}

// vicinity is how far from turf, in metres, things are that matter to one who
// walks it.
const vicinity = 3

// pointsOf returns the points of a kind within bounds.
func pointsOf(s *zones.Site, kind zones.Kind, near geo.Bounds) []geo.XY {
	var at []geo.XY
	for _, o := range s.Of(kind) {
		for _, p := range o.Points {
			if (geo.Bounds{Min: p, Max: p}).Meets(near) {
				at = append(at, p)
			}
		}
	}
	return at
}

func postsOf(s *zones.Site, near geo.Bounds, practice Practice) []Post {
	var posts []Post
	for _, p := range pointsOf(s, zones.Tree, near) {
		posts = append(posts, Post{p, practice.TrunkRing})
	}
	for _, p := range pointsOf(s, zones.Hazard, near) {
		posts = append(posts, Post{p, practice.HazardRing})
	}
	return posts
}

// contourOf returns the angle along which a zone that is steeper than practice
// allows otherwise is walked; nil if it is not, or faces nobody knows where.
func contourOf(z zones.Zone, practice Practice) *float64 {
	if z.Slope <= practice.ContourSlope || z.Aspect == nil {
		return nil
	}
	angle := math.Mod(360-math.Mod(*z.Aspect, 360), 180) * math.Pi / 180
	return &angle
}

// fencesOf returns the fences, walls and hedges that cover no ground, open at
// the gates.
func fencesOf(s *zones.Site, near geo.Bounds, gates []geo.XY) []geo.Line {
	var fences []geo.Line
	for _, kind := range []zones.Kind{zones.Fence, zones.Wall, zones.Hedge} {
		for _, o := range s.Of(kind) {
			if o.Cover != "" {
				continue
			}
			for _, l := range o.Lines {
				if !l.Bounds().Meets(near) {
					continue
				}
				fences = append(fences, opened(l, gates)...)
			}
		}
	}
	return fences
}

const (
	gateReach = 1.0 // m; a gate this near a fence leads through it
	gateHalf  = 0.6 // m; half of the opening
)

// opened returns what is left of a line when it is opened at the gates.
func opened(l geo.Line, gates []geo.XY) []geo.Line {
	parts := []geo.Line{l}
	for _, g := range gates {
		var left []geo.Line
		for _, part := range parts {
			left = append(left, openedAt(part, g)...)
		}
		parts = left
	}
	return parts
}

func openedAt(l geo.Line, gate geo.XY) []geo.Line {
	nearest, at := gateReach, 0
	for i := 1; i < len(l); i++ {
		if d := gate.DistanceToEdge(l[i-1], l[i]); d < nearest {
			nearest, at = d, i
		}
	}
	if at == 0 {
		return []geo.Line{l}
	}
	a, b := l[at-1], l[at]
	whole := a.Distance(b)
	foot := gate.Minus(a).Dot(b.Minus(a)) / whole
	var parts []geo.Line
	if from := foot - gateHalf; from > 0 {
		parts = append(parts, append(append(geo.Line(nil), l[:at]...), a.Toward(b, from/whole)))
	} else if at > 1 {
		parts = append(parts, l[:at])
	}
	if to := foot + gateHalf; to < whole {
		parts = append(parts, append(geo.Line{a.Toward(b, to/whole)}, l[at:]...))
	} else if at < len(l)-1 {
		parts = append(parts, l[at:])
	}
	return parts
}
