package render

import (
	"image/color"
	"math"

	"github.com/tdewolff/canvas"
)

// painter draws elements on a canvas renderer, which has millimetres and y
// upwards as a sheet does.
type painter struct {
	on    canvas.Renderer
	fonts [len(cuts)]*canvas.Font

	// outlined draws strokes as filled outlines, for renderers that cannot
	// stroke well.
	outlined bool
}

func (p *painter) draw(elements []Element) {
	visit(elements, func(e Element) {
		switch e := e.(type) {
		case Path:
			p.path(e)
		case Text:
			if e.Halo > 0 {
				p.path(e.halo())
			}
			p.text(e)
		}
	})
}

func (p *painter) path(e Path) {
	if e.Fill == e.Stroke && !e.Fill.none() && e.Weight > 0 && len(e.Dash) == 0 && !p.outlined {
		p.render(e.Lines, canvas.Style{Fill: paint(e.Fill), Stroke: paint(e.Stroke), StrokeWidth: e.Weight, StrokeJoiner: canvas.RoundJoin, StrokeCapper: canvas.ButtCap})
		return
	}
	if !e.Fill.none() {
		p.render(e.Lines, canvas.Style{Fill: paint(e.Fill)})
	}
	if e.Stroke.none() || e.Weight == 0 {
		return
	}
	if p.outlined {
		p.render(e.strokeOutline(), canvas.Style{Fill: paint(e.Stroke)})
		return
	}
	style := canvas.Style{Stroke: paint(e.Stroke), StrokeWidth: e.Weight, StrokeJoiner: canvas.RoundJoin, StrokeCapper: canvas.ButtCap}
	if e.Round {
		style.StrokeCapper = canvas.RoundCap
	}
	for _, length := range e.Dash {
		style.Dashes = append(style.Dashes, length/e.Weight) // canvas counts in line widths
	}
	p.render(e.Lines, style)
}

func (p *painter) render(lines []Line, style canvas.Style) {
	if path := canvasPath(lines); !path.Empty() {
		p.on.RenderPath(path, style, canvas.Identity)
	}
}

// text draws the letters left to right from where they start, so that the
// place does not depend on how canvas measures.
func (p *painter) text(t Text) {
	if t.String == "" || t.Ink.none() {
		return
	}
	at := canvas.Identity.Translate(grain(t.At.X), grain(t.At.Y))
	if t.Turn != 0 {
		at = at.Rotate(t.Turn)
	}
	start := -t.width() * t.Anchor.share()
	if t.Face.hasAll(t.String) {
		line := canvas.NewTextLine(p.font(t.Face).Face(t.Size, nrgba(t.Ink)), t.String, canvas.Left)
		p.on.RenderText(line, at.Translate(grain(start), 0))
		return
	}
	em := t.Size * mmPerPoint
	for _, r := range t.Face.shaped(t.String).runs {
		face := p.font(r.face).Face(t.Size, nrgba(t.Ink))
		face.Direction = r.direction()
		marks := r.marks()
		line := canvas.NewTextLine(face, r.without(marks), canvas.Left)
		p.on.RenderText(line, at.Translate(grain(start+r.x*em), 0))
		for _, g := range marks { // canvas does not heed where they are, and words are not found with them
			p.path(Path{Lines: t.outline(r.face, g.id, start+(r.x+g.x)*em, g.y*em), Fill: t.Ink})
		}
	}
}

// font loads a face when it is first needed. Fonts are not shared between
// documents: canvas changes them while it subsets.
func (p *painter) font(f Face) *canvas.Font {
	if p.fonts[f] == nil {
		loaded, err := canvas.LoadFont(cuts[f].file, 0, canvas.FontRegular)
		if err != nil {
			panic("render: built-in font " + f.String() + ": " + err.Error())
		}
		p.fonts[f] = loaded
	}
	return p.fonts[f]
}

func canvasPath(lines []Line) *canvas.Path {
	path := &canvas.Path{}
	for _, line := range lines {
		for i, q := range line.Points {
			if i == 0 {
				path.MoveTo(grain(q.X), grain(q.Y))
			} else {
				path.LineTo(grain(q.X), grain(q.Y))
			}
		}
		if line.Closed {
			path.Close()
		}
	}
	return path
}

func paint(k Ink) canvas.Paint { return canvas.Paint{Color: color.RGBA(nrgba(k))} }

func nrgba(k Ink) color.NRGBA { return color.NRGBA{k.R, k.G, k.B, 0xFF} }

// grain rounds to the micrometre.
func grain(mm float64) float64 { return math.Round(mm*1000) / 1000 }
