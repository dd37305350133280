package render

import (
	"bytes"
	"fmt"
)

// wgs84 is the geographic system EPSG 4326 as ISO 32000-2 wants it written.
// Longitude and latitude run so straight between the corners of a map that
// readers which take them for straight are off by less than 0.1 m on a
// kilometre of ground, and by a dot of the paper on a smaller site; another
// projection, which a reader might not know, need not be told.
const wgs84 = `<</Type/GEOGCS/EPSG 4326/WKT(GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137.0,298.257223563]],` +
	`PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]])>>`

// viewport tells readers where on the earth a map lies: a viewport with a
// geospatial measure (ISO 32000-2, 12.9 and 12.10), whose corners are given on
// the page and on the ground.
func viewport(s *Sheet) []byte {
	w := s.ground.window
	var ground []byte
	for _, corner := range []Point{{w.min.X, w.max.Y}, w.min, {w.max.X, w.min.Y}, w.max} {
		place := s.ground.place(corner)
		ground = fmt.Appendf(ground, "%.10f %.10f ", place.Lat(), place.Lon()) // latitude first; a hundredth of a millimetre
	}
	return fmt.Appendf(nil, "/VP[<</Type/Viewport/Name%s/BBox[%.4f %.4f %.4f %.4f]"+
		"/Measure<</Type/Measure/Subtype/GEO/Bounds[0 1 0 0 1 0 1 1]/LPTS[0 1 0 0 1 0 1 1]/GPTS[%s]/GCS%s>>>>]",
		pdfString(plain(s.name())), w.min.X/mmPerPoint, w.min.Y/mmPerPoint, w.max.X/mmPerPoint, w.max.Y/mmPerPoint,
		bytes.TrimSpace(ground), wgs84)
}

// placeMaps adds the viewport of its map to each page that has one.
func (d *pdfDocument) placeMaps(pages []int, sheets []*Sheet) {
	for i, s := range sheets {
		if s.ground == nil {
			continue
		}
		page := &d.objects[pages[i]-1]
		body := bytes.TrimSuffix(page.value, []byte(">>"))
		page.value = append(append(body[:len(body):len(body)], viewport(s)...), ">>"...)
	}
}
