package main

// Help is written by hand: what a command is for, how it is called, what its
// flags take, and a line that works.

const appHelp = `turfplat measures turf, divides it into zones and draws it to scale.

It reads a property traced as GeoJSON (longitude and latitude, WGS 84) or cut
from open map data (OSM XML, OSM PBF, Overpass JSON), takes beds, paving,
buildings and water off the turf, and tells how much is left, where, and how
sure that is.

Usage:
    turfplat COMMAND [flags] [FILE ...]

Commands:
    survey     make a site file of a map extract or a tracing
    check      say what is wrong with a file, and where
    measure    areas by cover and by zone, deductions, uncertainty
    zone       write the site file with its turf divided into zones
    map        draw the site map: SVG, PDF or PNG, true to scale
    feed       rows for quoting tools: CSV or JSON
    demo       write an invented property, its map and its feed into a folder
    version    print the version

Flags may stand before or after files. - is standard input.
turfplat COMMAND --help tells more.

Exit status: 0 done, 1 the input is at fault, 2 the command line is at fault.

Example:
    $ turfplat demo
    $ turfplat measure turfplat-demo/alder-lane.geojson
`

const readingHelp = `    --repair       take a ring that crosses itself for all that it goes round
    --tags FILE    a table of map tags to use in place of the built-in one
    --units U      us or metric; default: the site's own, else us
    --json         print for machines
    --quiet        show no progress
`

const linesHelp = `    --lines        one whole document, site or row a line, as they come; a
                   site at fault is told and left out, the good ones are kept
`

const outHelp = `    -o FILE        write there; default: standard output
`

const surveyHelp = `turfplat survey makes a site file of map data or of a tracing.

Usage:
    turfplat survey [flags] [FILE ...]

Map extracts are OSM XML, OSM PBF or Overpass JSON, told by their content; any
GeoJSON will do as well. Each object that plays a part gets its kind, its source
and its width, and keeps its tags; what plays none is left out. With an outline
the site is that property, and objects within 40 m of it are kept as well, for
the map. With -o, what was taken is told on standard output.

Flags:
    --outline FILE the property's edge: the areas in a GeoJSON file
` + readingHelp + linesHelp + outHelp + `
Example:
    $ turfplat survey town.osm.pbf --outline parcel.geojson -o site.geojson
`

const checkHelp = `turfplat check says what is wrong with site files, and where.

Usage:
    turfplat check [flags] [FILE ...]

Every problem is told, on standard error, with its file, feature and place:
errors keep the site from being measured, warnings tell of repairs and doubts.
The verdict on each site goes to standard output. Exit status 1 if any site
cannot be measured.

Flags:
` + readingHelp + linesHelp + outHelp + `
Example:
    $ turfplat check yard.geojson
`

const measureHelp = `turfplat measure tells how much turf there is.

Usage:
    turfplat measure [flags] [FILE ...]

Covers never overlap; where objects do, the higher one has the ground: building,
pool, water, hardscape, bed, synthetic, bare, rough, turf. Without a turf
polygon, turf is what is left inside the outline. Areas are those on the WGS 84
ellipsoid; +/- is half of the 95 % interval that the traced edges bear, and
figures are rounded to what that error bears. --json has them in full.

Flags:
    --by WHAT      site or zone: a row each, in place of a page a site
` + readingHelp + linesHelp + outHelp + `
Example:
    $ turfplat measure --units metric yard.geojson
`

const zoneHelp = `turfplat zone writes the site file with its turf divided into zones.

Usage:
    turfplat zone [flags] [FILE ...]

Keepouts come first, then traced zones, the smaller first, then what is left;
cutlines divide what they cross, run on straight at both ends. The zones fit
the turf without gap or overlap. Each is written as a feature of kind zone,
derived true, in place of those written before; all else is kept. With -o, a
table of the zones goes to standard output.

Flags:
` + readingHelp + linesHelp + outHelp + `
Example:
    $ turfplat zone yard.geojson -o yard-zones.geojson
`

const mapHelp = `turfplat map draws the site map of one property, north up and true to scale.

Usage:
    turfplat map [flags] [FILE]

The form follows the ending of the output: .pdf, .svg or .png (150 dpi);
without -o it is SVG. The scale is the largest standard one at which the
property fits the sheet, upright or across.

Flags:
    --paper P      letter, tabloid, a4 or a3; default: letter, or a4 in metric
    --scale S      1:240, 20ft (1 in = 20 ft)
    --mono         black, white and grey only
` + readingHelp + outHelp + `
Example:
    $ turfplat map yard.geojson -o yard.pdf
`

const feedHelp = `turfplat feed writes rows for quoting tools: one a zone, then one a cover.

Usage:
    turfplat feed [flags] [FILE ...]

area_quote_ft2 is the area up to the next 100 ft2. ci95_ft2 is half of the 95 %
interval. Zone rows have a zone_id, cover rows have none: sum one sort only.

Flags:
    --format F     csv, json or ndjson; default: csv
` + readingHelp + linesHelp + outHelp + `
Example:
    $ turfplat feed yard.geojson -o yard.csv
`

const demoHelp = `turfplat demo writes an invented property into a folder: its site file, its
site map as PDF and SVG, and its rows for a quoting tool.

Usage:
    turfplat demo [flags]

Flags:
    -o DIR         the folder; default: turfplat-demo
    --json         print for machines
`

const versionHelp = `turfplat version prints the version.

Usage:
    turfplat version [--json]
`
