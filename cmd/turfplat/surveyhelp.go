package main

const surveyHelp = `turfplat survey makes a site file of map data, tracings and walked tracks.

Usage:
    turfplat survey [flags] [FILE ...]

All files together make one site; what they hold is told by their content. With
-o, what was taken, ignored and left out is told on standard output.

Map extracts are OSM XML, OSM PBF or Overpass JSON; any GeoJSON will do as well.
Each object that plays a part gets its kind, its source, its width and its
height, and keeps its tags; what plays none is left out. With an outline the
site is that property, and objects within 40 m of it are kept as well, for the
map, and higher ones farther off, for their shade.

With parcels there is a site for each of them, one a line, in their order, of
the same objects as if the parcel were the outline. It has the parcel's id (or
what stands in the column --parcel-id names), else its name, else its line or
number. A parcel at fault is told and left out, the good ones are kept. A lot
without a mapped house or lawn is told as well: what is left of it counts as
turf, and hardly is.

Walked tracks are GPX, TCX, KML, KMZ, FIT, NMEA 0183, RTKLIB logs or CSV tables
of fixes (lat, lon, time, hdop). --as says what was walked round. Fixes that
cannot be right are dropped, laps are found and averaged, and the error of each
area is taken from the fixes themselves. A ring inside a ring of turf becomes a
bed, one inside a ring of another kind a hole. Nothing is added for a walker who
kept away from the edge unless --offset says so. Rings drawn in a map viewer
(KML, KMZ) are taken as traced, and --as says what they are; of turf, one inside
another becomes a bed too.

An area is of class A if its error (1 sigma) is at most 2 % and its fixes are
good to a foot, B at most 5 %, C at most 8 %, D above; E if too few fixes tell.

` + intoHelp + `
Flags:
    --outline FILE the property's edge: the areas in a GeoJSON file
    --parcels FILE a site for each area of a GeoJSON file, of any length
    --parcel-id C  the column (property) of the parcels that holds their ids
    --into SITE    add to this site file, which is left as it is
    --as KIND      what was walked round or drawn: turf, bed, outline, zone,
                   keepout, hardscape, building ...
    --offset L     how far from the edge the receiver was carried: 0.3m, 1ft
    --side S       where: inside (on the ground measured), outside, or edge
    --sigma L      error of a fix (1 sigma on one axis), if you know better: 1m
    --explain      tell every step, the fixes it dropped and the rules it goes
                   by, with their sources; without -o on standard error
` + readingHelp + linesHelp + textOutHelp + `
Walking a lawn:
    Have the sky open, and stand still for half a minute before you start.
    Record a fix a second; keep an even, slow pace, a yard or metre a second.
    Hold the receiver on the side of the edge, always at one height, and wait
    three seconds at each corner.
    Go round two or three times, the same way, and on past where you began.
    Wheel or tape strips narrower than 15 ft (5 m).
    Watch traffic, water and slopes, not the screen.

Examples:
    $ turfplat survey town.osm.pbf --outline parcel.geojson -o site.geojson
    $ turfplat survey town.osm.pbf --parcels parcels.geojson -o sites.ndjson
    $ turfplat survey --as turf --side edge walk.gpx -o site.geojson
    $ turfplat survey --into site.geojson --as bed --side edge rear.gpx -o site-2.geojson
`
