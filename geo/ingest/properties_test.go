package ingest

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// propertiesOf reads the properties of a feature.
func propertiesOf(t rapid.TB, object string) Properties {
	t.Helper()
	c := readOne(t, feature(`"properties":`+object))
	if len(c.Problems) > 0 {
		t.Fatal(c.Problems)
	}
	return c.Features[0].Properties
}

func TestScalars(t *testing.T) {
	type number struct {
		v  float64
		ok bool
	}
	type truth struct{ v, ok bool }
	none, no := number{}, truth{}
	for _, tt := range []struct {
		value, text string
		isText      bool
		number      number
		truth       truth
	}{
		{`"lawn"`, "lawn", true, none, no},
		{`"\u00e9\n\"\ud83c\udf33"`, "é\n\"🌳", true, none, no},
		{`""`, "", true, none, no},
		{`1.50`, "1.50", true, number{1.5, true}, no},
		{`-2e3`, "-2e3", true, number{-2000, true}, no},
		{`1e999`, "1e999", true, none, no},
		{`" 12.5 "`, " 12.5 ", true, number{12.5, true}, no},
		{`"+3"`, "+3", true, number{3, true}, no},
		{`"12 m"`, "12 m", true, none, no},
		{`"0x10"`, "0x10", true, none, no},
		{`"Inf"`, "Inf", true, none, no},
		{`"e"`, "e", true, none, no},
		{`true`, "true", true, none, truth{true, true}},
		{`false`, "false", true, none, truth{false, true}},
		{`"yes"`, "yes", true, none, truth{true, true}},
		{`"no"`, "no", true, none, truth{false, true}},
		{`1`, "1", true, number{1, true}, no},
		{`null`, "", false, none, no},
		{`[1]`, "", false, none, no},
		{`{"a":1}`, "", false, none, no},
	} {
		p := propertiesOf(t, `{"k": `+tt.value+` }`)
		if got, ok := p.Text("k"); got != tt.text || ok != tt.isText {
			t.Errorf("Text of %s is %q, %v", tt.value, got, ok)
		}
		if got, ok := p.Number("k"); ok != tt.number.ok || ok && got != tt.number.v {
			t.Errorf("Number of %s is %v, %v", tt.value, got, ok)
		}
		if got, ok := p.Bool("k"); got != tt.truth.v || ok != tt.truth.ok {
			t.Errorf("Bool of %s is %v, %v", tt.value, got, ok)
		}
		if !p.Has("k") || p.Has("K") {
			t.Errorf("Has is wrong for %s", tt.value)
		}
	}
}

func TestTag(t *testing.T) {
	for _, tt := range []struct {
		name, object, want string
		ok                 bool
	}{
		{"flat", `{"building":"yes"}`, "yes", true},
		{"nested", `{"tags":{"building":"yes"}}`, "yes", true},
		{"nested as text", `{"tags":" {\"building\":\"yes\"} "}`, "yes", true},
		{"flat before nested", `{"tags":{"building":"no"},"building":"yes"}`, "yes", true},
		{"flat null", `{"tags":{"building":"yes"},"building":null}`, "yes", true},
		{"number", `{"tags":{"building":1}}`, "1", true},
		{"absent", `{"tags":{"b":"yes"}}`, "", false},
		{"no tags", `{}`, "", false},
		{"tags of another kind", `{"tags":["building"]}`, "", false},
		{"tags of another kind as text", `{"tags":"[1]"}`, "", false},
		{"tags cut short", `{"tags":"{\"building\":\"yes\""}`, "", false},
		{"tags empty text", `{"tags":""}`, "", false},
	} {
		if got, ok := propertiesOf(t, tt.object).Tag("building"); got != tt.want || ok != tt.ok {
			t.Errorf("%s: got %q, %v", tt.name, got, ok)
		}
	}
}

func TestSetAndDelete(t *testing.T) {
	p := propertiesOf(t, `{"b":1, "a":2}`)
	q := p.Clone()
	q.Set("a", "<&é>")
	q.Set("c", 1.5)
	q.Set("\"d\"", "e")
	q.Set("b", true)
	q.Delete("b")
	q.Delete("nothing")
	if got, want := string(appendObject(nil, q.members)), `{"a":"<&é>","c":1.5,"\"d\"":"e"}`; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if got := p.Keys(); !slices.Equal(got, []string{"b", "a"}) {
		t.Errorf("the original changed to %v", got)
	}
	if v, _ := p.Number("a"); v != 2 {
		t.Errorf("the original's value changed to %v", v)
	}
	defer func() {
		if recover() == nil {
			t.Error("Set took NaN")
		}
	}()
	q.Set("nan", math.NaN())
}

func TestZeroProperties(t *testing.T) {
	var p Properties
	p.Delete("a")
	if _, ok := p.Tag("a"); ok || p.Has("a") || len(p.Keys()) > 0 {
		t.Error("the zero value is not empty")
	}
	p.Set("a", 1)
	if v, ok := p.Number("a"); v != 1 || !ok {
		t.Errorf("got %v, %v", v, ok)
	}
}

func TestManyMembersWithoutRepeats(t *testing.T) {
	p := propertiesOf(t, `{"a":1,"b":1,"c":1,"d":1,"e":1,"f":1,"g":1,"h":1,"i":1,"j":1,"k":1,"l":1,"m":1,"n":1,"o":1,"p":1,"q":7}`)
	if v, _ := p.Number("q"); v != 7 || len(p.Keys()) != 17 {
		t.Errorf("got %d members, q is %v", len(p.Keys()), v)
	}
}

// TestManyMembers: looking for names given twice does not compare all with all.
func TestManyMembers(t *testing.T) {
	const n = 200_000
	object := []byte(`{`)
	for i := range n {
		object = append(appendString(object, string(rune('a'+i%26))+string(appendDegrees(nil, float64(i), 0))), ":1,"...)
	}
	object = append(object, `"a0":2}`...)
	c := readOne(t, feature(`"properties":`+string(object)))
	checkSaid(t, c.Problems, `warning member_repeated: x: features[0]: member "a0" is given twice, took the last`)
	p := c.Features[0].Properties
	if v, _ := p.Number("a0"); v != 2 || len(p.Keys()) != n {
		t.Errorf("got %d members, a0 is %v", len(p.Keys()), v)
	}
}
