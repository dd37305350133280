package render

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/base64"
	"fmt"
	"html/template"
	"strings"
)

//go:embed page
var pageFiles embed.FS

// pageScripts are the scripts of a page in the order in which they run.
var pageScripts = []string{"page.js", "map.js", "layers.js", "zones.js", "ticks.js", "sections.js", "where.js"}

var pageForm = template.Must(template.ParseFS(pageFiles, "page/page.html"))

// A pageFill is what the form of a page is filled with.
type pageFill struct {
	Lang, Title, Site, Units     string
	Policy                       string
	Style                        template.CSS
	Script                       template.JS
	Map, Key                     template.HTML
	Facts                        []string
	Sections                     []pageSection
	Layers                       []pageLayer
	Data                         pageData
	Caution, Method, Attribution string
}

// write sets the page.
func (w *webPage) write(s *Sheet, v view) ([]byte, error) {
	drawing, err := SVG(s)
	if err != nil {
		return nil, err
	}
	key, err := w.keySheet()
	if err != nil {
		return nil, err
	}
	style, script := pageFile("page.css"), ""
	for _, name := range pageScripts {
		script += pageFile(name)
	}
	t := w.told
	fill := pageFill{
		Lang: s.lang(), Title: t.letters.of(t.measured.Name), Site: t.letters.of(t.measured.Name),
		Policy: pagePolicy([]string{style, styleOf(drawing), styleOf(key)}, script),
		Style:  template.CSS(style), Script: template.JS(script),
		Map: template.HTML(drawing), Key: template.HTML(key),
		Facts: w.facts(), Sections: w.sections, Layers: w.layers(), Data: w.data(s, v),
		Caution: strings.Replace(cautionText, "map", "page", 1), Method: t.methodOfSite(), Attribution: t.letters.of(t.plat.Site.Attribution),
	}
	var file bytes.Buffer
	err = pageForm.Execute(&file, fill)
	return file.Bytes(), err
}

func (d *draft) methodOfSite() string { return siteMap{draft: d}.method() }

func pageFile(name string) string {
	text, err := pageFiles.ReadFile("page/" + name)
	if err != nil {
		panic("render: " + err.Error())
	}
	return string(text)
}

// pagePolicy lets a page run what it holds and load nothing (W3C, Content
// Security Policy Level 3).
func pagePolicy(styles []string, script string) string {
	allowed := ""
	for _, style := range styles {
		allowed += " " + sourceHash(style)
	}
	return "default-src 'none'; style-src" + allowed + "; script-src " + sourceHash(script) + "; font-src data:; base-uri 'none'; form-action 'none'"
}

func sourceHash(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}

// styleOf is the style within a drawing.
func styleOf(drawing []byte) string {
	_, rest, _ := strings.Cut(string(drawing), "<style>")
	style, _, _ := strings.Cut(rest, "</style>")
	return style
}

// keySheet is the key of the map as a drawing of its own.
func (w *webPage) keySheet() ([]byte, error) {
	const width = 70.0 // mm
	key := w.legendOfPage()
	_, height := key.set(Point{}, width)
	s := NewSheet("key", "Key to the map", Paper{Name: "page", Width: width + 2, Height: height + 2})
	elements, _ := key.set(Point{1, height + 1}, width)
	s.Add(elements...)
	var meanings []string
	for _, e := range key.entries {
		meanings = append(meanings, e.text)
	}
	s.Subject = strings.Join(meanings, "; ") + "."
	if w.draft.options.Mono {
		s.Elements = monochrome(s.Elements)
	}
	return SVG(s)
}

// facts are the lines at the foot of the page.
func (w *webPage) facts() []string {
	t := w.told
	facts := []string{
		"net turf " + t.figures.areaInWords(t.tally.net.AreaM2, t.tally.net.CI95M2),
		fmt.Sprintf("site %s, revision %d", t.letters.of(t.measured.ID), t.measured.Revision),
	}
	if missing := w.draft.letters.missing; len(missing) > 0 {
		facts = append(facts, fmt.Sprintf("%c on the map stands for letters that its typefaces lack: %s", standIn, strings.Join(scriptsOf(missing), ", ")))
	}
	if t.plat.TurfResidual() {
		facts = append(facts, noLawnText)
	}
	if w.plan != nil {
		facts = append(facts, fmt.Sprintf("program %s, season %d, as of: %s", t.letters.of(w.plan.Program.Name), w.plan.Year, asOf(w.plan)))
	}
	return facts
}
