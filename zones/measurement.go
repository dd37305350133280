package zones

import (
	"math"

	"github.com/paulmach/orb"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/turf"
)

// MeasureSchema names the form of Measurement.
const MeasureSchema = "turfplat/measure/1"

// A Measurement is what a property measures, in the form in which machines
// read it. Areas are full precision; an area's sigma is the 1-sigma error that
// its traced edges bring with them, ci95 the half-width of the 95 % interval.
type Measurement struct {
	ID          string               `json:"id"`
	Name        string               `json:"name"`
	Center      orb.Point            `json:"center"`
	Cell        string               `json:"cell"`
	Outline     *AreaMeasure         `json:"outline"`
	TracedTurf  TracedTurfMeasure    `json:"traced_turf"`
	Covers      map[Kind]AreaMeasure `json:"covers"`
	Unknown     UnknownMeasure       `json:"unknown"`
	Deductions  []Deduction          `json:"deductions"`
	Zones       []ZoneMeasure        `json:"zones"`
	Edges       EdgeMeasure          `json:"edges"`
	Warnings    []WarningMeasure     `json:"warnings"`
	Revision    int                  `json:"-"`
	InputSHA256 string               `json:"-"`
}

// AreaMeasure is the measure of a region. Its perimeter is the length of its
// border, round holes too, but for both sides of what is narrower than 5 cm.
type AreaMeasure struct {
	AreaM2     float64 `json:"area_m2"`
	AreaFt2    float64 `json:"area_ft2"`
	PerimeterM float64 `json:"perimeter_m"`
	SigmaM2    float64 `json:"sigma_m2"`
	CI95M2     float64 `json:"ci95_m2"`
	Pieces     int     `json:"pieces"`
}

// UnknownMeasure is the ground inside the outline that nothing covers.
type UnknownMeasure struct {
	AreaM2 float64 `json:"area_m2"`
}

// TracedTurfMeasure is the turf before deductions.
type TracedTurfMeasure struct {
	From             Kind    `json:"from"`
	AreaM2           float64 `json:"area_m2"`
	OutsideOutlineM2 float64 `json:"outside_outline_m2"`
}

// A Deduction is what one object takes off the traced turf.
type Deduction struct {
	Feature string  `json:"feature"`
	Kind    Kind    `json:"kind"`
	AreaM2  float64 `json:"area_m2"`
	Name    string  `json:"-"`
}

// ZoneMeasure is the measure of a zone.
type ZoneMeasure struct {
	ID            string  `json:"id"`
	Name          string  `json:"name"`
	Exposure      string  `json:"exposure"`
	Species       string  `json:"species"`
	Apply         bool    `json:"apply"`
	AreaM2        float64 `json:"area_m2"`
	AreaFt2       float64 `json:"area_ft2"`
	SurfaceAreaM2 float64 `json:"surface_area_m2"`
	PerimeterM    float64 `json:"perimeter_m"`
	SigmaM2       float64 `json:"sigma_m2"`
	CI95M2        float64 `json:"ci95_m2"`

	SunHours      *float64 `json:"sun_hours,omitempty"`      // a day of direct sun, mean; nil = not known
	DoubtfulShare float64  `json:"doubtful_share,omitempty"` // of it lies within half an hour of a limit

	SunFit    string        `json:"sun_fit,omitempty"`    // "enough sun", "short of sun" or "too little sun" for its grass; "" = not known
	SunLimits *turf.SunNeed `json:"sun_limits,omitempty"` // of that grass

	Letter       string  `json:"-"`
	SlopePercent float64 `json:"-"`
	Watered      bool    `json:"-"`
	EdgingM      float64 `json:"-"`
}

// EdgeMeasure is the length of turf edges by what they meet.
type EdgeMeasure struct {
	TurfHardscapeM float64 `json:"turf_hardscape_m"`
	TurfBedM       float64 `json:"turf_bed_m"`
	TrimM          float64 `json:"trim_m"`
}

// WarningMeasure is a warning or note.
type WarningMeasure struct {
	Code    string `json:"code"`
	Text    string `json:"text"`
	Feature string `json:"feature"`
}

// interval95 turns a 1-sigma error into the half-width of the 95 % interval of
// a normal error.
const interval95 = 1.959963984540054

// Measurement measures a plat.
func (p *Plat) Measurement() Measurement {
	s, g := p.Site, p.Ground
	center := s.Frame.Center()
	m := Measurement{
		ID: s.ID, Name: s.Name, Center: center, Cell: geo.Cell(center),
		Covers:     make(map[Kind]AreaMeasure),
		Unknown:    UnknownMeasure{float64(s.Frame.Area(g.Unknown))},
		Deductions: []Deduction{}, Zones: []ZoneMeasure{}, Warnings: []WarningMeasure{},
		Revision: s.Revision, InputSHA256: s.Digest(),
	}
	m.TracedTurf = TracedTurfMeasure{g.Traced.From, float64(s.Frame.Area(g.Traced.All)), float64(s.Frame.Area(g.Traced.Outside))}
	b := p.borders()
	defer b.release()
	measures := p.measure(b.all()...)
	if !g.Outline.Empty() {
		m.Outline = &measures[0]
		measures = measures[1:]
	}
	for i, c := range g.Covers {
		m.Covers[c.Kind] = measures[i]
	}
	for _, d := range g.OffTurf {
		if d.Area > 0 {
			m.Deductions = append(m.Deductions, Deduction{d.Object.ID, d.Object.Cover, float64(d.Area), d.Object.Name})
		}
	}
	hardscape, bed := b.edging(b.of(Turf))
	m.Edges = EdgeMeasure{float64(hardscape), float64(bed), float64(p.trim(b))}
	measures = measures[len(g.Covers):]
	for i, z := range p.Zones {
		if len(p.Zones) == 1 { // it is the turf
			m.Zones = append(m.Zones, z.measure(m.Covers[Turf], hardscape+bed))
			continue
		}
		hardscape, bed := b.edging(b.zones[i])
		m.Zones = append(m.Zones, z.measure(measures[i], hardscape+bed))
	}
	m.Warnings = append(m.Warnings, warnings(s.Problems)...)
	return m
}

// Measure measures a part of the property.
func (p *Plat) Measure(r geo.Region) AreaMeasure {
	return p.measure(geo.NewBroadBorder(r, touching))[0]
}

// measure measures parts of the property.
func (p *Plat) measure(parts ...*geo.Border) []AreaMeasure {
	f := p.Site.Frame
	measures := make([]AreaMeasure, len(parts))
	for i, sigma := range p.Ground.traces.AreaSigmas(parts...) {
		r := parts[i].Region()
		area, sigma := f.Area(r), float64(sigma)
		measures[i] = AreaMeasure{float64(area), area.SquareFeet(), float64(f.BorderLength(parts[i])), sigma, interval95 * sigma, p.Site.pieces(r)}
	}
	return measures
}

// measure is the measure of a zone whose area and edging are known.
func (z Zone) measure(a AreaMeasure, edging geo.Length) ZoneMeasure {
	slope := z.Slope / 100
	m := ZoneMeasure{
		ID: z.ID, Name: z.Name, Exposure: z.Exposure, Species: z.Species, Apply: z.Apply, Letter: z.Letter, SlopePercent: z.Slope, Watered: z.Watered,
		AreaM2: a.AreaM2, AreaFt2: a.AreaFt2, SurfaceAreaM2: a.AreaM2 * math.Hypot(1, slope), // 1/cos(atan(slope))
		PerimeterM: a.PerimeterM, SigmaM2: a.SigmaM2, CI95M2: a.CI95M2,
		EdgingM: float64(edging), DoubtfulShare: z.Sun.Doubtful,
	}
	if z.Sun.Known {
		m.SunHours = &z.Sun.Hours
	}
	if z.Sun.Need != nil {
		m.SunFit, m.SunLimits = z.Sun.Fit.String(), z.Sun.Need
	}
	return m
}

func warnings(problems []ingest.Problem) []WarningMeasure {
	var told []WarningMeasure
	for _, p := range problems {
		told = append(told, WarningMeasure{p.Code, p.String(), p.Place.Label})
	}
	return told
}
