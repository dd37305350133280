package turf

// Season is when a grass grows.
type Season string

// The seasons of grasses.
const (
	Cool Season = "cool"
	Warm Season = "warm"
)

// A Species is one grass, or a group of them that is grown as one.
type Species struct {
	Name      string
	Also      []string // other names, botanical and local ones
	Season    Season
	ShadeRank int // among those of its season, 1 = bears most shade; 0 = not known

	Sun      Figures // hours of direct sun a day that it wants, mean over its season
	LeastSun Figures // hours below which it thins out

	Mowing   Figures // height of cut, m
	Seeding  Figures // of new turf, kg/m2
	Overseed Figures // of thin turf, kg/m2
	Seeds    Figures // in a kilogram

	YearN      Figures // nitrogen a year, kg/m2
	OnceN      Figures // nitrogen at one time, kg/m2
	ShadeYearN Figures // nitrogen a year in shade, kg/m2
	ShadeOnceN Figures // nitrogen at one time in shade, kg/m2
}

// A column of the table holds figures in one unit.
type column struct {
	name    string
	factor  float64 // to SI
	most    float64 // that is believed, in the column's unit
	figures func(*Species) *Figures
}

const (
	mostHours  = 24
	mostInches = 24
	mostPounds = 100
	mostGrams  = 500
	mostSeeds  = 1e8
)

// columns are those that hold figures; several may hold the same ones in
// different units.
var columns = []column{
	{"sun_h", 1, mostHours, func(s *Species) *Figures { return &s.Sun }},
	{"least_sun_h", 1, mostHours, func(s *Species) *Figures { return &s.LeastSun }},
	{"mow_in", inchM, mostInches, func(s *Species) *Figures { return &s.Mowing }},
	{"mow_mm", millimetreM, mostInches * inchM / millimetreM, func(s *Species) *Figures { return &s.Mowing }},
	{"seed_lb_per_1000ft2", poundPer1000KG, mostPounds, func(s *Species) *Figures { return &s.Seeding }},
	{"seed_g_per_m2", gramKG, mostGrams, func(s *Species) *Figures { return &s.Seeding }},
	{"overseed_lb_per_1000ft2", poundPer1000KG, mostPounds, func(s *Species) *Figures { return &s.Overseed }},
	{"overseed_g_per_m2", gramKG, mostGrams, func(s *Species) *Figures { return &s.Overseed }},
	{"seeds_per_lb", 1 / poundKG, mostSeeds, func(s *Species) *Figures { return &s.Seeds }},
	{"n_year_lb_per_1000ft2", poundPer1000KG, mostPounds, func(s *Species) *Figures { return &s.YearN }},
	{"n_year_g_per_m2", gramKG, mostGrams, func(s *Species) *Figures { return &s.YearN }},
	{"n_once_lb_per_1000ft2", poundPer1000KG, mostPounds, func(s *Species) *Figures { return &s.OnceN }},
	{"n_once_g_per_m2", gramKG, mostGrams, func(s *Species) *Figures { return &s.OnceN }},
	{"shade_n_year_lb_per_1000ft2", poundPer1000KG, mostPounds, func(s *Species) *Figures { return &s.ShadeYearN }},
	{"shade_n_year_g_per_m2", gramKG, mostGrams, func(s *Species) *Figures { return &s.ShadeYearN }},
	{"shade_n_once_lb_per_1000ft2", poundPer1000KG, mostPounds, func(s *Species) *Figures { return &s.ShadeOnceN }},
	{"shade_n_once_g_per_m2", gramKG, mostGrams, func(s *Species) *Figures { return &s.ShadeOnceN }},
}
