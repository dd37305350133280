package render

// A mapLayer is a part of a map that is drawn at once.
type mapLayer struct {
	id, title string
	draw      func(view) ([]Element, error)
}

// drawLayers draws layers, bottom first.
func drawLayers(layers []mapLayer, v view) ([]Element, error) {
	var elements []Element
	for _, l := range layers {
		drawn, err := l.draw(v)
		if err != nil {
			return nil, err
		}
		elements = append(elements, Group{ID: l.id, Title: l.title, Elements: drawn})
	}
	return elements, nil
}
