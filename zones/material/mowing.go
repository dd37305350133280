package material

import "example.org/turfplat/geo"

// Mowing is how grass is kept at a height while it grows.
type Mowing struct {
	Height geo.Length // to which it is cut
	Share  Share      // of its height that one cut may take, MowingShare by practice
}

// MowAt returns the height at which the grass must be cut so that no cut takes
// more than its share.
func (m Mowing) MowAt() (geo.Length, error) {
	if !(m.Height > 0 && m.Share > 0 && m.Share < 1) {
		return 0, inputErrorf("", "grass is cut to a height above nothing, by less than all of it")
	}
	return m.Height / geo.Length(1-m.Share), nil
}
