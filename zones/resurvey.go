package zones

import (
	"encoding/json"
	"math"
	"reflect"
	"strings"

	"example.org/turfplat/geo/ingest"
)

// surveyWords are the properties that tell how an object was surveyed. They
// follow its geometry; all others are its owner's word.
var surveyWords = []string{"source", "sigma_m", "laps", "class", "offset_m", "side", "fixes"}

// widthWords are the properties that give the width of a line.
var widthWords = []string{"width_m", "width_ft"}

// resurveyed returns the feature of an object as it stands after a second
// survey: with the geometry of that, and with what tells how it was surveyed;
// with id, name and what else was said of it as before.
func resurveyed(old, new *Object) *ingest.Feature {
	f := *old.Feature
	f.Geometry, f.Properties = new.Feature.Geometry, old.Feature.Properties.Clone()
	props, again := &f.Properties, new.Feature.Properties
	if old.Kind != new.Kind {
		props.Set("kind", new.Kind)
	}
	onLine := shapeOf(new.Feature.Geometry) == line && old.Width > 0
	defaultWidth := onLine && new.Source == DefaultWidth // tells nothing of a line that has a width
	if !defaultWidth {
		graft(props, again, surveyWords)
	}
	if !defaultWidth && !(onLine && new.Width == 0) {
		graft(props, again, widthWords)
	}
	if tags, ok := again.Raw("tags"); ok && mapped(new) {
		props.Set("tags", tags)
		old.graftHeight(props, again)
	}
	for _, key := range again.Keys() {
		if raw, _ := again.Raw(key); key != "id" && !defaultWidth && !props.Has(key) {
			props.Set(key, raw)
		}
	}
	return &f
}

// heightWords are the properties that give the height of an object that map
// data tell of.
var heightWords = []string{"height_m", "height_from"}

// graftHeight takes the height that a later extract gives an object, unless its
// owner states one.
func (o *Object) graftHeight(props *ingest.Properties, from ingest.Properties) {
	if o.Stature.From != Stated && props.Has("height_from") {
		graft(props, from, heightWords)
	}
}

// graft takes properties over from others, missing ones too.
func graft(props *ingest.Properties, from ingest.Properties, keys []string) {
	for _, key := range keys {
		if raw, ok := from.Raw(key); ok {
			props.Set(key, raw)
		} else {
			props.Delete(key)
		}
	}
}

// mapped reports whether an object comes from map data, not from a survey of
// the property itself.
func mapped(o *Object) bool { return o.Source == Imported || o.Source == DefaultWidth }

// steady reports whether a second survey of an object tells nothing new: its
// area, or the length of its line, is within 2 %, and its edge lies on the
// whole where it lay, by the errors of both (root sum of squares of their
// 1-sigma figures).
func (p *footprints) steady(old, again *Object, before, after Extent) bool {
	if sameTracing(old, again) {
		return true
	}
	if !within(stability, before.AreaM2, after.AreaM2) || !within(stability, before.LengthM, after.LengthM) {
		return false
	}
	return p.shift(old, again) <= math.Hypot(float64(old.Error.Sigma), float64(again.Error.Sigma))
}

// within reports whether a figure changed by less than a share of it.
func within(share, before, after float64) bool {
	return before == after || math.Abs(after-before) < share*before
}

// outranked says why what stands in a site holds against a second survey of
// it, or nothing if it does not: whatever their errors, what was surveyed on
// the property stands above map data, and a mapped area above a line drawn at
// a default width.
func outranked(old, new *Object) string {
	switch {
	case mapped(new) && !mapped(old):
		return string(old.Source) + " here, which stands above map data"
	case new.Source == DefaultWidth && shapeOf(old.Feature.Geometry) == area:
		return "mapped as an area, which stands above a line drawn at a default width"
	}
	return ""
}

// isMapID reports whether an id is that of map data.
func isMapID(id string) bool { return strings.HasPrefix(id, "osm:") }

// retagged returns the feature of an object with the map tags of a later
// extract, nil if they are the same.
func retagged(old, new *Object) *ingest.Feature {
	before, tagged := old.Feature.Properties.Raw("tags")
	after, stillTagged := new.Feature.Properties.Raw("tags")
	if !tagged || !stillTagged || !isMapID(old.Feature.ID) || old.Feature.ID != new.Feature.ID || sameJSON(before, after) {
		return nil
	}
	f := *old.Feature
	f.Properties = f.Properties.Clone()
	f.Properties.Set("tags", after)
	old.graftHeight(&f.Properties, new.Feature.Properties)
	return &f
}

func sameJSON(a, b json.RawMessage) bool {
	var v, w any
	return json.Unmarshal(a, &v) == nil && json.Unmarshal(b, &w) == nil && reflect.DeepEqual(v, w)
}
