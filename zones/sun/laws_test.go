package sun

import (
	"math"
	"runtime"
	"slices"
	"sync"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"example.org/turfplat/geo"
)

const lawStep = 1.0 // m, cells of the laws' grids

// drawnYard draws one of the invented yards, 24 m wide.
func drawnYard(t *rapid.T) []Obstacle {
	rng := inventedSource(rapid.Uint64().Draw(t, "yard"))
	return obstaclesOf(inventedYard(rng, 24, rapid.IntRange(0, 12).Draw(t, "objects")))
}

func drawnScene(t *rapid.T) Scene {
	return Scene{
		Place:        orb.Point{rapid.Float64Range(-180, 180).Draw(t, "lon"), rapid.Float64Range(-66, 66).Draw(t, "lat")},
		Obstacles:    drawnYard(t),
		MinElevation: Degrees(rapid.Float64Range(0, 15).Draw(t, "least")),
	}
}

func drawnSeason(t *rapid.T) Season {
	day := rapid.IntRange(0, 364)
	return Season{From: dateOf(day.Draw(t, "from")), To: dateOf(day.Draw(t, "to"))}
}

// thinned keeps one beam in seven: laws hold for each.
func thinned(beams []beam) []beam {
	var few []beam
	for i := 3; i < len(beams); i += 7 {
		few = append(few, beams[i])
	}
	return few
}

func hoursOver(s Scene, beams []beam) *Field {
	return s.under(beams, GridOver(squareOf(24).Bounds(), lawStep), squareOf(24))
}

// changed returns an obstacle whose positions are moved by a map of the plane
// that keeps shapes.
func changed(o Obstacle, by func(geo.XY) geo.XY) Obstacle {
	ring := func(r geo.Ring) geo.Region {
		moved := make(geo.Ring, len(r))
		for i, p := range r {
			moved[i] = by(p)
		}
		return regionOf(moved)
	}
	switch s := o.Shape.(type) {
	case Prism:
		s.Plan = ring(s.Plan.Polygons()[0].Shell)
		o.Shape = s
	case Roof:
		s.Plan = ring(s.Plan.Polygons()[0].Shell)
		if s.Bearing != nil {
			way := by(s.Bearing.heading())
			turned := Degrees(math.Atan2(way.X, way.Y) / degree)
			s.Bearing = &turned
		}
		o.Shape = s
	case Crown:
		s.At = by(s.At)
		o.Shape = s
	case Screen:
		line := slices.Clone(s.Line)
		for i, p := range line {
			line[i] = by(p)
		}
		s.Line = line
		o.Shape = s
	}
	return o
}

// A yard and the sun turned together: each spot, taken along, gets the same
// hours.
func TestRotationLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawnScene(t)
		beams := thinned(s.beams(drawnSeason(t)))
		sin, cos := math.Sincos(rapid.Float64Range(0, 2*math.Pi).Draw(t, "turn"))
		by := func(p geo.XY) geo.XY { return geo.XY{X: p.X*cos - p.Y*sin, Y: p.X*sin + p.Y*cos} }
		turned := Scene{}
		for _, o := range s.Obstacles {
			turned.Obstacles = append(turned.Obstacles, changed(o, by))
		}
		spot := geo.XY{X: rapid.Float64Range(-12, 12).Draw(t, "x"), Y: rapid.Float64Range(-12, 12).Draw(t, "y")}
		before, after := s.viewFrom(spot), turned.viewFrom(by(spot))
		for _, b := range beams {
			want := passing(before.before(b))
			b.towards = by(b.towards)
			if got := passing(after.before(b)); math.Abs(got-want) > 1e-9 {
				t.Fatalf("the light of %+v: %g, turned %g", b, want, got)
			}
		}
	})
}

// A building, a wall or a hedge raised: no cell gains.
func TestRaisingLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawnScene(t)
		beams := thinned(s.beams(drawnSeason(t)))
		before := hoursOver(s, beams)
		up := rapid.Float64Range(0, 5).Draw(t, "up")
		for i := range s.Obstacles {
			switch shape := s.Obstacles[i].Shape.(type) {
			case Prism:
				shape.Top += up
				s.Obstacles[i].Shape = shape
			case Roof:
				shape.Eave, shape.Ridge = shape.Eave+up, shape.Ridge+up
				s.Obstacles[i].Shape = shape
			case Screen:
				shape.Height += up
				s.Obstacles[i].Shape = shape
			}
		}
		for cell, after := range hoursOver(s, beams).Values {
			if after > before.Values[cell]+1e-9 {
				t.Fatalf("cell %d gains: %g h, before %g h", cell, after, before.Values[cell])
			}
		}
	})
}

// Without obstacles every cell gets all the time during which the sun stands
// above the least elevation, found here by the clock.
func TestOpenGroundLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawnScene(t)
		s.Obstacles = nil
		date := dateOf(rapid.IntRange(0, 364).Draw(t, "date"))
		noon := courseOf(s.Place.Lon(), s.Place.Lat(), commonYear, date).noon
		want := 0.0
		const steps = 6 * 60 * 24
		for i := range steps {
			at := noon.Add(hours(24*(float64(i)+0.5)/steps - 12))
			if At(s.Place.Lon(), s.Place.Lat(), at).Elevation >= s.MinElevation {
				want += 24.0 / steps
			}
		}
		for cell, got := range hoursOver(s, s.beams(Season{From: date, To: date})).Values {
			if math.Abs(got-want) > 0.01 {
				t.Fatalf("cell %d: %g h, want %g", cell, got, want)
			}
		}
	})
}

// Across the equator, under the sun of the other half of the year, a yard seen
// in a mirror gets the mirrored hours.
func TestMirrorLaw(t *testing.T) {
	mirror := func(p geo.XY) geo.XY { return geo.XY{X: p.X, Y: -p.Y} }
	rapid.Check(t, func(t *rapid.T) {
		s := drawnScene(t)
		south := Scene{}
		for _, o := range s.Obstacles {
			south.Obstacles = append(south.Obstacles, changed(o, mirror))
		}
		var northern, southern []beam
		for range 40 {
			declination := rapid.Float64Range(-0.409, 0.409).Draw(t, "declination")
			hour := rapid.Float64Range(-2, 2).Draw(t, "hour angle")
			lat := s.Place.Lat() * degree
			northern = append(northern, beamOf(apparentSun{declination: declination}.over(lat, hour)))
			southern = append(southern, beamOf(apparentSun{declination: -declination}.over(-lat, hour)))
		}
		north, mirrored := hoursOver(s, northern), hoursOver(south, southern)
		for cell, want := range north.Values {
			column, row := cell%north.Columns, cell/north.Columns
			if got := mirrored.Values[(north.Rows-1-row)*north.Columns+column]; math.Abs(got-want) > 1e-9 {
				t.Fatalf("cell %d: %g h in the north, %g h in the south", cell, want, got)
			}
		}
	})
}

func beamOf(p Position) beam {
	return beam{towards: p.Azimuth.heading(), climb: math.Tan(p.Elevation.radians()), hours: 1}
}

// The same with the sun as it is, over its whole year: the year's halves
// differ by a week, as the earth is nearer the sun in January.
func TestMirrorWithTheRealSun(t *testing.T) {
	house := Obstacle{Shape: Prism{oblong{long: 5, wide: 3}.region(), 0, 6}}
	season := Season{From: Date{4, 15}, To: Date{10, 15}}
	north := Scene{Place: orb.Point{0, 45}, Obstacles: []Obstacle{house}, MinElevation: LeastElevation}
	south := north
	south.Place = orb.Point{0, -45}
	n, s := hoursOver(north, north.beams(season)), hoursOver(south, south.beams(season.acrossEquator()))
	for cell, want := range n.Values {
		column, row := cell%n.Columns, cell/n.Columns
		if got := s.Values[(n.Rows-1-row)*n.Columns+column]; math.Abs(got-want) > 0.35 {
			t.Errorf("cell %d: %.3f h in the north, %.3f h in the south", cell, want, got)
		}
	}
}

// More than twice the instants move no cell by more than a tenth of an hour.
func TestSamplingIsFineEnough(t *testing.T) {
	for n, place := range []orb.Point{{-93, 45}, {-84, 33.75}, {25, 60}, {151, -34}, {-78, 0}} {
		yard := obstaclesOf(inventedYard(inventedSource(uint64(n)), 24, 5*(1+n)))
		s := Scene{Place: place, Obstacles: yard, MinElevation: LeastElevation}
		for _, season := range []Season{{From: Date{4, 15}, To: Date{10, 15}}, {From: Date{9, 22}, To: Date{9, 22}}} {
			coarse, fine := hoursOver(s, s.beams(season)), hoursOver(s, s.lattice(season, 6765, 4181))
			for cell, want := range fine.Values {
				if got := coarse.Values[cell]; math.Abs(got-want) > 0.1 {
					t.Errorf("lat %g, %v, cell %d: %.3f h, sampled finer %.3f h", place.Lat(), season, cell, got, want)
				}
			}
		}
	}
}

// The same bytes on any number of cores and from any number of goroutines.
func TestHoursAreDeterministic(t *testing.T) {
	s := Scene{Place: orb.Point{-93, 45}, Obstacles: obstaclesOf(inventedYard(inventedSource(9), 24, 20)), MinElevation: LeastElevation}
	season := Season{From: Date{6, 21}, To: Date{6, 30}}
	of := func() []float64 {
		return s.Hours(GridOver(squareOf(24).Bounds(), 0.5), squareOf(24), season).Values
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	want := of()
	runtime.GOMAXPROCS(4)
	var group sync.WaitGroup
	for range 4 {
		group.Go(func() {
			if !slices.Equal(of(), want) {
				t.Error("hours differ from those on one core")
			}
		})
	}
	group.Wait()
}
