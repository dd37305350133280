package program

import (
	"time"

	"example.org/turfplat/geo"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones/material"
	"example.org/turfplat/zones/turf"
)

// A Program is a season's steps, in order.
type Program struct {
	Name       string
	Hemisphere Hemisphere     // "" = by the site's latitude
	Season     turf.Season    // of zones whose grass is not known; "" = none
	Region     string         // whose law of fertilizers holds; "" = the site's
	Carry      material.Share // loaded beyond what the rates ask for
	Checked    []Check
	Steps      []Step

	Calibrations []Calibration // of the user's own spreaders

	builtIn bool // its cautions and notes are advice as published, not the user's words
}

// A Step is one job of the season.
type Step struct {
	ID    string
	Title string
	Does  Job
	Use   Use // as the file states it
	Where Where
	When  When

	Material string
	Rate     *material.Rate // of one pass; nil = by label, or nothing is put down
	Passes   int            // of one visit
	Every    time.Duration  // between visits while the window is open; 0 = one visit
	Product  Product
	Carrier  material.Rate   // of the finished mix, of one pass; zero = none stated
	Tank     material.Volume // of the mix; 0 = not stated

	WaterIn    *WaterIn
	KeepDry    time.Duration // after it; 0 = need not
	BlocksSeed time.Duration // after it; 0 = not stated
	AfterSeed  time.Duration // how long it waits after seed, by its label; 0 = not stated
	StayOff    string
	Height     Height
	Bagged     bool   // clippings are taken off
	Method     Method // of seeding

	OnlyIf   string // the need that a person finds first; "" = always
	Cautions []string
	Notes    []string // practice and advice, with their sources
	Checked  []Check
	Override []Override
	Done     []time.Time // the days on which it was done, in order; of a step without Every one

	ofActives []Use                   // what the active ingredients that it names are for
	figures   material.Figures        // in which advice on it is told
	places    map[string]ingest.Place // of its keys in the file
}

// A Product is a material with what only a season asks of it.
type Product struct {
	material.Product
	Active string         // name of the active ingredient
	Slow   material.Share // of its nitrogen that is released slowly
}

// WaterIn is water that a step needs after it.
type WaterIn struct {
	Depth  geo.Length
	Within time.Duration
}

// Height is how high grass is cut. The zero Height is the usual one of each
// grass.
type Height struct {
	Of  geo.Length // 0 = by the grass
	Top bool       // the top of the grass's range
}

// An Override lets a person answer for what a rule would hold back.
type Override struct {
	Rule   string
	Zones  []string // ids or names; none = all
	Reason string
}

// Job is what a crew does.
type Job string

// The jobs.
const (
	Rake     Job = "rake"
	Core     Job = "core"
	Topdress Job = "topdress"
	Spray    Job = "spray"
	Spread   Job = "spread"
	Water    Job = "water"
	Mow      Job = "mow"
	Seed     Job = "seed"
	Scout    Job = "scout"
)

var jobs = []Job{Rake, Core, Topdress, Spray, Spread, Water, Mow, Seed, Scout}

// lays reports whether a job puts a material on the ground.
func (j Job) lays() bool {
	switch j {
	case Topdress, Spray, Spread, Water, Seed:
		return true
	}
	return false
}

// Spreadable reports whether the step is a job for a broadcast or drop spreader.
func (s *Step) Spreadable() bool {
	return s.Does == Spread || s.Does == Seed && s.Method != Slit
}

// Use is what a material is for, where rules hang on it.
type Use string

// The uses. The first four are pesticides.
const (
	PreEmergent Use = "pre_emergent"
	Broadleaf   Use = "broadleaf"
	Insecticide Use = "insecticide"
	Fungicide   Use = "fungicide"
	Microbial   Use = "microbial"
	Fertilizer  Use = "fertilizer"
	Biochemical Use = "biostimulant"
	Wetting     Use = "wetting_agent"
)

var uses = []Use{PreEmergent, Broadleaf, Insecticide, Fungicide, Microbial, Fertilizer, Biochemical, Wetting}

// pesticide reports whether a label with a rate of law stands behind the use.
func (u Use) pesticide() bool {
	switch u {
	case PreEmergent, Broadleaf, Insecticide, Fungicide:
		return true
	}
	return false
}

// Method is how seed is put down.
type Method string

// The methods.
const (
	Broadcast Method = "broadcast"
	Slit      Method = "slit"
)

var methods = []Method{Broadcast, Slit}

// Check is a thing that a person has looked at and answers for.
type Check string

// The checks.
const (
	SoilTestP    Check = "soil_test_p"
	SoilTestK    Check = "soil_test_k"
	FlowersMown  Check = "flowers_mown"
	GreenUp      Check = "green_up"
	NewTurf      Check = "new_turf"
	RainForecast Check = "no_rain_forecast"
)

var checks = []Check{SoilTestP, SoilTestK, FlowersMown, GreenUp, NewTurf, RainForecast}

// Hemisphere is the half of the earth whose seasons hold.
type Hemisphere string

// The hemispheres.
const (
	North Hemisphere = "north"
	South Hemisphere = "south"
)

var hemispheres = []Hemisphere{North, South}

// HemisphereAt is that of a latitude in degrees.
func HemisphereAt(latitude float64) Hemisphere {
	if latitude < 0 {
		return South
	}
	return North
}
