package sun

import (
	"fmt"
	"math"
	"testing"

	"example.org/turfplat/geo"
)

// sunAt is a beam from an azimuth and an elevation.
func sunAt(azimuth, elevation Degrees) beam {
	return beam{towards: azimuth.heading(), climb: math.Tan(elevation.radians()), hours: 1, inLeaf: 1}
}

// lightOn is the share of a beam that reaches a spot, by the grid.
func lightOn(s Scene, spot geo.XY, b beam) float64 {
	cell := oblong{at: spot, long: 0.5, wide: 0.5}.region()
	g := Grid{Origin: geo.XY{X: spot.X - 0.5, Y: spot.Y - 0.5}, Step: 1, Columns: 1, Rows: 1}
	return s.under([]beam{b}, g, cell).Values[0]
}

// shadowLength is how far from the frame's centre light first reaches the
// ground along a bearing, to a micrometre.
func shadowLength(s Scene, bearing Degrees, b beam) float64 {
	shade, light := 0.01, 1e4
	for light-shade > 1e-6 { // bisection
		middle := (shade + light) / 2
		way := bearing.heading()
		if lightOn(s, geo.XY{X: way.X * middle, Y: way.Y * middle}, b) > 0 {
			light = middle
		} else {
			shade = middle
		}
	}
	return light
}

// post is a thin wall across the sun, of a height above the sample.
func post(azimuth Degrees, height float64) Obstacle {
	across := leftOf(azimuth.heading())
	return Obstacle{Shape: Screen{Line: geo.Line{{X: across.X, Y: across.Y}, {X: -across.X, Y: -across.Y}}, Height: height + sampleHeight}}
}

// Length = height / tan(elevation) on level ground, away from the sun.
func TestShadowLength(t *testing.T) {
	for _, tt := range []struct{ height, elevation, length float64 }{
		{10, 30, 17.320508}, {10, 45, 10}, {10, 60, 5.773503}, {6, 20, 16.484865}, {8, 15, 29.856406}, {20, 5, 228.601046},
	} {
		for _, azimuth := range []Degrees{0, 90, 137, 180, 293} {
			s := Scene{Obstacles: []Obstacle{post(azimuth, tt.height)}}
			got := shadowLength(s, azimuth+180, sunAt(azimuth, Degrees(tt.elevation)))
			if math.Abs(got-tt.length) > 5e-6 {
				t.Errorf("%g m under a sun at %g, %g: a shadow of %.6f m, want %.6f", tt.height, azimuth, tt.elevation, got, tt.length)
			}
		}
	}
}

// Length = height / (tan(elevation) + rise towards the shadow's tip).
func TestShadowLengthOnSlope(t *testing.T) {
	const azimuth = 140
	everywhere := squareOf(1000)
	for _, tt := range []struct {
		name   string
		rise   float64
		aspect Degrees
		length float64
	}{
		{"rising towards the tip", 0.1, azimuth, 14.7634},
		{"falling towards the tip", 0.1, azimuth + 180, 20.9490},
		{"across", 0.1, azimuth + 90, 17.3205},
		{"level", 0, azimuth, 17.3205},
	} {
		s := Scene{Obstacles: []Obstacle{post(azimuth, 10)}, Slopes: []Slope{{everywhere, tt.rise, tt.aspect}}}
		if got := shadowLength(s, azimuth+180, sunAt(azimuth, 30)); math.Abs(got-tt.length) > 5e-5 {
			t.Errorf("%s: a shadow of %.4f m, want %.4f", tt.name, got, tt.length)
		}
	}
	behind := Scene{Slopes: []Slope{{everywhere, 0.6, azimuth + 180}}} // 31 degrees
	if got := lightOn(behind, geo.XY{}, sunAt(azimuth, 30)); got != 0 {
		t.Errorf("a sun behind the slope gives %g of its light", got)
	}
	if got := lightOn(behind, geo.XY{}, sunAt(azimuth, 32)); got != 1 {
		t.Errorf("a sun just above the slope gives %g of its light", got)
	}
}

// Which spots of shapes lie in shade, with the sun due south at 45 degrees:
// shadows reach as far north as things are high.
func TestShapes(t *testing.T) {
	o := oblong{long: 4, wide: 2} // 8 m east to west, 4 m north to south
	plan := o.region()
	court, err := geo.RegionOf([]geo.Ring{squareOf(20).Polygons()[0].Shell, squareOf(10).Polygons()[0].Shell})
	if err != nil {
		t.Fatal(err)
	}
	south := Degrees(180)
	north := Degrees(0)
	const h = sampleHeight
	for _, tt := range []struct {
		name  string
		shape Shape
		shade []float64 // distances north of the centre, m
		light []float64
	}{
		{"prism", Prism{plan, 0, 5 + h}, []float64{-1.9, 0, 2, 6.9}, []float64{-2.1, 7.1}},
		{"passage", Prism{plan, 3 + h, 5 + h}, []float64{1.1, 6.9}, []float64{-1.9, 0.9, 7.1}},
		{"courtyard", Prism{court, 0, 4 + h}, []float64{-9, -4, -1.1, 6, 13.9}, []float64{-0.9, 4.9, 14.1}},
		{"gabled, along the longer side", Roof{Plan: plan, Eave: 3 + h, Ridge: 6 + h}, []float64{5.9}, []float64{6.1}},
		{"gabled, across", Roof{Plan: plan, Eave: 3 + h, Ridge: 6 + h, Across: true}, []float64{7.9}, []float64{8.1}},
		{"gabled, by bearing", Roof{Plan: plan, Eave: 3 + h, Ridge: 6 + h, Bearing: &north}, []float64{7.9}, []float64{8.1}},
		{"hipped", Roof{Plan: plan, Eave: 3 + h, Ridge: 6 + h, Form: Hipped}, []float64{5.9}, []float64{6.1}},
		{"hipped, by bearing", Roof{Plan: plan, Eave: 3 + h, Ridge: 6 + h, Form: Hipped, Bearing: &north}, []float64{5.9}, []float64{6.1}},
		{"pyramidal", Roof{Plan: plan, Eave: 3 + h, Ridge: 6 + h, Form: Pyramidal}, []float64{5.9}, []float64{6.1}},
		{"skillion, down to the south", Roof{Plan: plan, Eave: 3 + h, Ridge: 6 + h, Form: Skillion, Bearing: &south}, []float64{7.9}, []float64{8.1}},
		{"skillion, down to the north", Roof{Plan: plan, Eave: 3 + h, Ridge: 6 + h, Form: Skillion, Bearing: &north}, []float64{4.9}, []float64{5.1}},
		{"skillion of unknown bearing", Roof{Plan: plan, Eave: 3 + h, Ridge: 6 + h, Form: Skillion}, []float64{6.4}, []float64{6.6}},
		{"gabled over a courtyard", Roof{Plan: court, Eave: 3 + h, Ridge: 5 + h}, []float64{-1.1, 13.9}, []float64{-0.9, 14.1}},
		{"ellipsoid", Crown{Radius: 3, Base: 4 + h, Top: 4 + 6 + h}, []float64{7 - 4.24, 7 + 4.24}, []float64{7 - 4.25, 7 + 4.25}},
		{"cone", Crown{Radius: 3, Base: 4 + h, Top: 4 + 6 + h, Form: Cone}, []float64{1.1, 9.9}, []float64{0.9, 10.1}},
		{"flat cone", Crown{Radius: 3, Base: 4 + h, Top: 4 + 2 + h, Form: Cone}, []float64{1.1, 6.9}, []float64{0.9, 7.1}},
		{"thin screen", Screen{geo.Line{{X: -5}, {X: 5}}, 2 + h, 0}, []float64{0.1, 1.9}, []float64{-0.1, 2.1}},
		{"hedge", Screen{geo.Line{{X: -5}, {X: 5}}, 2 + h, 1}, []float64{-0.4, 2.4}, []float64{-0.6, 2.6}},
		{"hedge with a corner here", Screen{geo.Line{{X: -5}, {X: 0}, {X: 0, Y: -5}}, 2 + h, 1}, []float64{2.4, 0, -6.9 + 2}, []float64{2.6, -5.1}},
		{"lower than the grass", Screen{geo.Line{{X: -5}, {X: 5}}, h, 1}, nil, []float64{0}},
		{"upside down", Prism{plan, 5, 4}, nil, []float64{0, 3}},
		{"no radius", Crown{Top: 5}, nil, []float64{0, 3}},
		{"no plan", Roof{Eave: 3, Ridge: 4}, nil, []float64{0}},
		{"line of one point", Screen{geo.Line{{}, {}}, 2, 1}, nil, []float64{0, 1}},
	} {
		s := Scene{Obstacles: []Obstacle{{Shape: tt.shape}}}
		for _, y := range tt.shade {
			if lightOn(s, geo.XY{Y: y}, sunAt(180, 45)) > 0 {
				t.Errorf("%s: light %g m north", tt.name, y)
			}
		}
		for _, y := range tt.light {
			if lightOn(s, geo.XY{Y: y}, sunAt(180, 45)) == 0 {
				t.Errorf("%s: shade %g m north", tt.name, y)
			}
		}
	}
}

// The ends of a ridge show from the side: the shadow of a house with the sun in
// the east is that of its gable, or of its hip.
func TestRidgeEnds(t *testing.T) {
	plan := oblong{long: 4, wide: 2}.region()
	for _, tt := range []struct {
		form RoofForm
		want float64 // west of the centre: the ridge's far end and its shadow
	}{{Gabled, 4 + 6}, {Hipped, 2 + 6}, {Pyramidal, 0 + 6}} {
		roof := Roof{Plan: plan, Eave: 1 + sampleHeight, Ridge: 6 + sampleHeight, Form: tt.form}
		s := Scene{Obstacles: []Obstacle{{Shape: roof}}}
		if got := shadowLength(s, 270, sunAt(90, 45)); math.Abs(got-tt.want) > 5e-6 {
			t.Errorf("form %d: a shadow to %.6f m, want %g", tt.form, got, tt.want)
		}
	}
}

// Crowns multiply; a crown of several parts counts once, and so does one thing
// behind another.
func TestLightThroughCrowns(t *testing.T) {
	two, err := geo.Union(squareOf(4), oblong{at: geo.XY{Y: -6}, long: 2, wide: 2}.region())
	if err != nil {
		t.Fatal(err)
	}
	half := Pass{0.5, 0.9}
	crown := func(y float64) Shape { return Crown{geo.XY{Y: y}, 2, 2, 6, Ellipsoid} }
	spot, sun := geo.XY{Y: 4}, sunAt(180, 45)
	for _, tt := range []struct {
		name      string
		obstacles []Obstacle
		inLeaf    float64
		want      float64
	}{
		{"one crown", []Obstacle{{Shape: crown(0), Pass: half}}, 1, 0.5},
		{"one crown, bare", []Obstacle{{Shape: crown(0), Pass: half}}, 0, 0.9},
		{"one crown, coming into leaf", []Obstacle{{Shape: crown(0), Pass: half}}, 0.25, 0.8},
		{"two crowns", []Obstacle{{Shape: crown(0), Pass: half}, {Shape: crown(0.5), Pass: Pass{0.2, 0.2}}}, 1, 0.1},
		{"a wood of two parts", []Obstacle{{Shape: Prism{two, 2, 20}, Pass: half}}, 1, 0.5},
		{"a wood with a corner", []Obstacle{bend(oblong{long: 4, wide: 2}, 1, 20, half).Obstacle}, 1, 0.5},
		{"a crown before a wall", []Obstacle{{Shape: crown(0), Pass: half}, {Shape: Prism{squareOf(2), 0, 9}}}, 1, 0},
		{"a crown out of the way", []Obstacle{{Shape: crown(9), Pass: half}}, 1, 1},
		{"more than all", []Obstacle{{Shape: crown(0), Pass: Pass{1.5, 1.5}}}, 1, 1},
	} {
		sun.inLeaf = tt.inLeaf
		if got := lightOn(Scene{Obstacles: tt.obstacles}, spot, sun); math.Abs(got-tt.want) > 1e-12 {
			t.Errorf("%s: %g of the light, want %g", tt.name, got, tt.want)
		}
	}
}

// The grid sees what each of its spots sees, whatever stands in the way.
func TestGridSeesWhatSpotsSee(t *testing.T) {
	for n := range uint64(20) {
		t.Run(fmt.Sprint(n), func(t *testing.T) {
			rng := inventedSource(n)
			s := Scene{Obstacles: obstaclesOf(inventedYard(rng, 30, 24))}
			g := GridOver(squareOf(30).Bounds(), 0.5)
			for range 20 {
				b := sunAt(Degrees(rng.Float64()*360), Degrees(5+80*rng.Float64()))
				b.inLeaf = rng.Float64()
				field := s.under([]beam{b}, g, squareOf(30))
				for range 10 {
					cell := rng.IntN(g.Cells())
					if want := passing(s.viewFrom(g.Center(cell)).before(b)); math.Abs(field.Values[cell]-want) > 1e-9 {
						t.Fatalf("cell %d gets %g of the light, the spot %g", cell, field.Values[cell], want)
					}
				}
			}
		})
	}
}
