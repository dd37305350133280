package lanes

import (
	"math"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

// A Summary is what a plan comes to, in the form in which machines read it: all
// passes together, but for amounts of the product. Spacing is the mean over the length of the lanes; outside_m2 is the ground
// that what lands off the turf would serve at the rate.
type Summary struct {
	Mode           Mode                   `json:"mode"`
	SwathM         float64                `json:"swath_m"`
	SpacingM       float64                `json:"spacing_m"`
	Lanes          int                    `json:"lanes"`
	SpreadLengthM  float64                `json:"spread_length_m"`
	LeastLengthM   float64                `json:"least_length_m"` // ground over nominal spacing
	TravelLengthM  float64                `json:"travel_length_m"`
	Turns          int                    `json:"turns"`
	Refills        int                    `json:"refills"`
	Minutes        float64                `json:"minutes"`
	GroundM2       float64                `json:"ground_m2"`
	ByHandM2       float64                `json:"by_hand_m2"`
	CoveredShare   float64                `json:"covered_share"`
	MissedM2       float64                `json:"missed_m2"`
	DoubledM2      float64                `json:"doubled_m2"`
	OutsideM2      float64                `json:"outside_m2"`
	OutsideShare   float64                `json:"outside_share"`
	OutsideByCover map[zones.Kind]float64 `json:"outside_share_by_cover"`
	CVPercent      float64                `json:"cv_percent"`
	SettingShare   float64                `json:"setting_share"` // of the rate, to which a spreader calibrated for the swath is set
	Product        *LoadSummary           `json:"product,omitempty"`
	Passes         []PassSummary          `json:"passes,omitempty"` // if there are several
}

// A PassSummary is what one of several passes comes to.
type PassSummary struct {
	Number        int     `json:"pass_number"` // from 1
	Lanes         int     `json:"lanes"`
	SpreadLengthM float64 `json:"spread_length_m"`
	TravelLengthM float64 `json:"travel_length_m"`
	Minutes       float64 `json:"minutes"`
	SettingShare  float64 `json:"setting_share"`
}

// Summary sums the plan up.
func (p Plan) Summary(c Coverage) Summary {
	swath := p.Work.Pattern.Swath()
	s := Summary{
		Mode: p.Work.Mode, SwathM: swath,
		SpreadLengthM: p.SpreadLength(), LeastLengthM: float64(p.Passes()) * c.Ground / p.Work.Mode.Spacing(swath), TravelLengthM: p.TravelLength(),
		Turns: p.Turns, Refills: p.Refills(), Minutes: p.Duration().Minutes(),
		GroundM2: c.Ground, ByHandM2: c.Hand, CoveredShare: c.Covered, MissedM2: c.Missed, DoubledM2: c.Doubled,
		Product:   p.Work.Load.summary(p.Work.Units, c),
		OutsideM2: c.Outside * c.Ground, OutsideShare: c.Outside, OutsideByCover: make(map[zones.Kind]float64), CVPercent: 100 * c.Even.CV,
	}
	for _, l := range p.Lanes {
		if l.Spreading {
			s.Lanes++
			s.SpacingM += l.Spacing * length(l.Line) / s.SpreadLengthM
		}
	}
	if s.SpreadLengthM > 0 {
		s.SettingShare = float64(p.Passes()) * c.Ground / (s.SpreadLengthM * swath)
	}
	s.Passes = p.passSummaries(c, swath)
	for kind, share := range c.Where {
		if kind == "" {
			kind = "beyond"
		}
		if share > 0 {
			s.OutsideByCover[kind] = share
		}
	}
	return s
}

func (p Plan) passSummaries(c Coverage, swath float64) []PassSummary {
	if p.Passes() == 1 {
		return nil
	}
	var all []PassSummary
	for n := 1; n <= p.Passes(); n++ {
		part := p.OfPass(n)
		s := PassSummary{Number: n, Lanes: part.count(), SpreadLengthM: part.SpreadLength(), TravelLengthM: part.TravelLength(), Minutes: part.Duration().Minutes()}
		if s.SpreadLengthM > 0 {
			s.SettingShare = c.Ground / (s.SpreadLengthM * swath)
		}
		all = append(all, s)
	}
	return all
}

// File returns the plan as GeoJSON: a LineString a lane or way, in walking
// order, and its summary.
func (p Plan) File(s *zones.Site, sum Summary) *ingest.Collection {
	c := new(ingest.Collection)
	c.SetMember("site", map[string]string{"id": s.ID, "name": s.Name})
	if s.Attribution != "" {
		c.SetMember("attribution", s.Attribution)
	}
	c.SetMember("summary", sum)
	for _, l := range p.Lanes {
		c.Features = append(c.Features, p.feature(s.Frame, l))
	}
	return c
}

func (p Plan) feature(f geo.Frame, l Lane) *ingest.Feature {
	w := p.Work
	var props ingest.Properties
	props.Set("kind", "lane")
	props.Set("pass", l.Pass)
	props.Set("n", l.N)
	props.Set("zone", l.Zone)
	props.Set("length_m", thousandths(float64(f.LineLength(l.Line))))
	props.Set("spreading", l.Spreading)
	if l.Spreading {
		props.Set("spacing_m", thousandths(l.Spacing))
		props.Set("ground_m2", thousandths(l.Ground))
		props.Set("left_m2", thousandths(l.Left))
		if w.Load.Known() {
			props.Set("product", w.Load.Material)
			props.Set("unit", w.Load.Unit(w.Units).String())
			props.Set("amount", thousandths(w.Load.On(w.Units, l.Ground)))
			props.Set("left", thousandths(w.Load.On(w.Units, l.Left)))
		}
		if filled := p.filledFor(l.N); filled > 0 {
			props.Set("put_in_m2", thousandths(filled))
			if w.Load.Known() {
				props.Set("put_in", thousandths(w.Load.On(w.Units, filled)))
			}
		}
		props.Set("zones", p.zoneShares(f, l))
	}
	if l.Deflector != Neither {
		props.Set("deflector", l.Deflector)
		props.Set("beside", besideWords(l.Beside))
	}
	if l.Refill {
		props.Set("refill", true)
	}
	if p.Work.Load.Several() {
		props.Set("pass_number", l.PassNo)
	}
	if l.Again != "" {
		props.Set("repeats", l.Again)
	}
	line := make(orb.LineString, len(l.Line))
	for i, q := range l.Line {
		line[i] = f.Place(q)
	}
	return ingest.NewFeature(props, line)
}

// A zoneShare is what of a lane falls to one of the zones through which it
// runs, in the form in which machines read it.
type zoneShare struct {
	Zone     string   `json:"zone"`
	LengthM  float64  `json:"length_m"`
	GroundM2 float64  `json:"ground_m2"`
	Amount   *float64 `json:"amount,omitempty"` // in the lane's unit; nil = goes by its label
}

func (p Plan) zoneShares(f geo.Frame, l Lane) []zoneShare {
	w, whole := p.Work, float64(f.LineLength(l.Line))
	shares := make([]zoneShare, len(l.Stretches))
	for i, s := range l.Stretches {
		shares[i] = zoneShare{Zone: s.Zone, LengthM: thousandths(s.Share * whole), GroundM2: thousandths(s.Share * l.Ground)}
		if w.Load.Known() {
			amount := thousandths(w.Load.On(w.Units, s.Share*l.Ground))
			shares[i].Amount = &amount
		}
	}
	return shares
}

// besideWords names what lies beside a lane, "beyond" where nothing is known.
func besideWords(kinds []zones.Kind) []zones.Kind {
	words := append([]zones.Kind{}, kinds...)
	for i, k := range words {
		if k == "" {
			words[i] = "beyond"
		}
	}
	return words
}

func thousandths(v float64) float64 { return math.Round(v*1000) / 1000 }
