package main

import (
	"encoding/binary"
	"encoding/json"
	"io"
	"math"
	"slices"

	"github.com/parquet-go/parquet-go"
	"github.com/paulmach/orb"
	"github.com/paulmach/orb/encoding/wkb"

	"example.org/turfplat/zones"
)

// feedColumns are the columns of a row of the feed, in the feed's order.
type feedColumns struct {
	SiteID       string  `parquet:"site_id"`
	ZoneID       string  `parquet:"zone_id,dict"`
	Class        string  `parquet:"class,dict"`
	Name         string  `parquet:"name,dict"`
	Species      string  `parquet:"species,dict"`
	Exposure     string  `parquet:"exposure,dict"`
	AreaM2       float64 `parquet:"area_m2"`
	AreaFt2      float64 `parquet:"area_ft2"`
	AreaQuoteFt2 float64 `parquet:"area_quote_ft2"`
	AreaAcre     float64 `parquet:"area_acre"`
	PerimeterM   float64 `parquet:"perimeter_m"`
	EdgingM      float64 `parquet:"edging_m"`
	BedAreaFt2   float64 `parquet:"bed_area_ft2"`
	Method       string  `parquet:"method,dict"`
	SigmaM2      float64 `parquet:"sigma_m2"`
	CI95Ft2      float64 `parquet:"ci95_ft2"`
	Revision     int     `parquet:"revision"`
	InputSHA256  string  `parquet:"input_sha256"`
	Software     string  `parquet:"software,dict"`
	Schema       string  `parquet:"schema,dict"`
	Apply        bool    `parquet:"apply"`
	TreatedFt2   float64 `parquet:"treated_ft2"`
	Warnings     string  `parquet:"warnings,dict"`
}

// A parquetRow is a row of the feed with its ground. GeoParquet 1.1 wants the
// box in a group beside the geometry, missing where that is.
type parquetRow struct {
	feedColumns
	Geometry []byte `parquet:"geometry,optional"`
	Box      *box   `parquet:"bbox,optional"`
}

// A box is the rectangle round a geometry, in degrees.
type box struct {
	XMin float64 `parquet:"xmin"`
	YMin float64 `parquet:"ymin"`
	XMax float64 `parquet:"xmax"`
	YMax float64 `parquet:"ymax"`
}

// with is the box round both.
func (b box) with(c box) box {
	return box{min(b.XMin, c.XMin), min(b.YMin, c.YMin), max(b.XMax, c.XMax), max(b.YMax, c.YMax)}
}

// ground is that of a row, as it stands in the file.
type ground struct {
	kind string
	wkb  []byte
	box  box
}

// groundOf prepares ground in degrees; nil if there is none.
func groundOf(m orb.MultiPolygon) (*ground, error) {
	var g orb.Geometry = m
	switch len(m) {
	case 0:
		return nil, nil
	case 1:
		g = m[0]
	}
	b := g.Bound()
	text, err := wkb.Marshal(g, binary.LittleEndian)
	return &ground{g.GeoJSONType(), text, box{b.Min.Lon(), b.Min.Lat(), b.Max.Lon(), b.Max.Lat()}}, err
}

// groupBytes is how much is gathered into a group of rows, which is what
// writing takes of memory and what an engine reads at a time.
const groupBytes = 32 << 20

// parquetRows writes GeoParquet 1.1 (geoparquet.org/releases/v1.1.0).
type parquetRows struct {
	w       *parquet.GenericWriter[parquetRow]
	pending int // bytes since the last group
	rows    int
	kinds   []string
	box     box
}

func newParquetRows(w io.Writer) *parquetRows {
	return &parquetRows{
		w: parquet.NewGenericWriter[parquetRow](w,
			parquet.CreatedBy("turfplat", version, "release"),
			parquet.Compression(&parquet.Zstd),
			parquet.SkipPageBounds("geometry"),
		),
		box: box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)},
	}
}

func (p *parquetRows) empty() bool { return p.rows == 0 }

func (p *parquetRows) write(rows []shapedRow) error {
	for _, r := range rows {
		row := parquetRow{feedColumns: feedColumns(r.FeedRow)}
		if g := r.ground; g != nil {
			row.Geometry, row.Box = g.wkb, &g.box
			p.box = p.box.with(g.box)
			if !slices.Contains(p.kinds, g.kind) {
				p.kinds = append(p.kinds, g.kind)
			}
		}
		if _, err := p.w.Write([]parquetRow{row}); err != nil {
			return err
		}
		p.rows++
		p.pending += len(row.Geometry) + 8*len(zones.FeedColumns)
	}
	if p.pending < groupBytes {
		return nil
	}
	p.pending = 0
	return p.w.Flush()
}

// geoMetadata is what GeoParquet says of the geometry. Without a crs it is
// OGC:CRS84, longitude and latitude on WGS 84.
type geoMetadata struct {
	Version string               `json:"version"`
	Primary string               `json:"primary_column"`
	Columns map[string]geoColumn `json:"columns"`
}

type geoColumn struct {
	Encoding    string    `json:"encoding"`
	Kinds       []string  `json:"geometry_types"`
	Orientation string    `json:"orientation"`
	Box         []float64 `json:"bbox,omitempty"`
	Covering    covering  `json:"covering"`
}

type covering struct {
	Box map[string][2]string `json:"bbox"`
}

func (p *parquetRows) finish() error {
	slices.Sort(p.kinds)
	column := geoColumn{
		Encoding: "WKB", Kinds: append([]string{}, p.kinds...), Orientation: "counterclockwise",
		Covering: covering{map[string][2]string{"xmin": {"bbox", "xmin"}, "ymin": {"bbox", "ymin"}, "xmax": {"bbox", "xmax"}, "ymax": {"bbox", "ymax"}}},
	}
	if len(p.kinds) > 0 {
		column.Box = []float64{p.box.XMin, p.box.YMin, p.box.XMax, p.box.YMax}
	}
	text, err := json.Marshal(geoMetadata{Version: "1.1.0", Primary: "geometry", Columns: map[string]geoColumn{"geometry": column}})
	if err != nil {
		return err
	}
	p.w.SetKeyValueMetadata("geo", string(text))
	return p.w.Close()
}
