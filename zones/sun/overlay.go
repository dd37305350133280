package sun

// overlay takes the sun of one instant off the cells in shadow: each cell of
// lost, rows of Columns+1 as running sums, loses what does not come through
// all the obstacles over it.
func (r *raster) overlay(lost []float64, hours float64) {
	for row := r.from; row < r.to; row++ {
		spans := r.rows[row]
		if len(spans) == 0 {
			continue
		}
		steps := lost[row*(r.grid.Columns+1) : (row+1)*(r.grid.Columns+1)]
		if len(spans) == 1 {
			take(steps, spans[0].from, spans[0].to, hours*(1-spans[0].pass))
			continue
		}
		r.sweep(spans, steps, hours)
	}
}

// take adds a loss to the cells of a row, as a step up and a step down.
func take(steps []float64, from, to int, loss float64) {
	steps[from] += loss
	steps[to] -= loss
}

// sweep goes along a row from one end of a span to the next. Under an opaque
// obstacle it goes to that one's end at once.
func (r *raster) sweep(spans []span, steps []float64, hours float64) {
	byStart(spans)
	active := r.active[:0]
	at := 0
	for next := 0; next < len(spans) || len(active) > 0; {
		if len(active) == 0 {
			at = max(at, spans[next].from)
		}
		for ; next < len(spans) && spans[next].from <= at; next++ {
			if spans[next].to > at {
				active = append(active, spans[next])
			}
		}
		if len(active) == 0 {
			continue
		}
		end, pass := through(active)
		if pass > 0 && next < len(spans) {
			end = min(end, spans[next].from)
		}
		take(steps, at, end, hours*(1-pass))
		at = end
		active = beyond(active, at)
	}
	r.active = active
}

// through returns the share of sun that comes through spans that all begin
// here, and the column up to which it holds.
func through(active []span) (end int, pass float64) {
	end, pass = active[0].to, 1
	for _, s := range active {
		if s.pass == 0 {
			return s.to, 0
		}
		pass *= s.pass
		end = min(end, s.to)
	}
	return end, pass
}

// beyond keeps the spans that reach beyond a column.
func beyond(active []span, at int) []span {
	kept := active[:0]
	for _, s := range active {
		if s.to > at {
			kept = append(kept, s)
		}
	}
	return kept
}

// byStart sorts spans, few as they are, by their first column.
func byStart(spans []span) {
	for i := 1; i < len(spans); i++ {
		s := spans[i]
		j := i
		for ; j > 0 && spans[j-1].from > s.from; j-- {
			spans[j] = spans[j-1]
		}
		spans[j] = s
	}
}

// mark remembers where an obstacle's shadows begin.
func (r *raster) mark() {
	for row := r.from; row < r.to; row++ {
		r.marks[row] = len(r.rows[row])
	}
}

// unite joins the shadows cast since the mark, so that an obstacle of several
// parts shades each cell once.
func (r *raster) unite() {
	for row := r.from; row < r.to; row++ {
		parts := r.rows[row][r.marks[row]:]
		if len(parts) < 2 {
			continue
		}
		byStart(parts)
		last := 0
		for _, s := range parts[1:] {
			if s.from > parts[last].to {
				last++
				parts[last] = s
				continue
			}
			parts[last].to = max(parts[last].to, s.to)
		}
		r.rows[row] = r.rows[row][:r.marks[row]+last+1]
	}
}
