package main

// Help is written by hand, beside each command: what it is for, how it is
// called, what its flags take, and a line that works. Here stands what they
// share.

const appHelp = `turfplat measures turf, divides it into zones, plans its season, lays the lanes
of a spreader and draws it all to scale.

It reads a property traced as GeoJSON (longitude and latitude, WGS 84), cut from
open map data (OSM XML, OSM PBF, Overpass JSON) or walked with a receiver, takes
beds, paving, buildings and water off the turf, and tells how much is left,
where, and how sure that is.

Usage:
    turfplat COMMAND [flags] [FILE ...]

Commands:
    survey     make a site file of map data, tracings and walked tracks
    check      say what is wrong with a file, and where
    measure    areas by cover and by zone, deductions, uncertainty
    zone       write the site file with its turf divided into zones
    plan       lay a season's program on the zones: what, when, where, how much
    lanes      lay the lanes along which a spreader is walked, as GeoJSON
    map        draw the site map, or the packet for a crew: SVG, PDF, PNG, HTML
    feed       rows for quoting tools: CSV, JSON or Parquet
    demo       write an invented property, its map, packet and feed to a folder
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
    --region NAME  whose law of fertilizers and setbacks from water hold,
                   written into site files; default: that which the site names,
                   else no law, and proposed setbacks
    --units U      us or metric; default: the site's own, else us
    --json         print for machines
    --quiet        show no progress
`

const linesHelp = `    --lines        one whole document, site or row a line, as they come; a
                   site at fault is told and left out, the good ones are kept
    --resume       go on with the FILE.part that a run with --lines left when it
                   broke off; give it the same input and flags. A FILE that is
                   whole stays, and gets the sites that its input has besides
`

const outHelp = `    -o FILE        write there; default: standard output
`

const textOutHelp = `    -o FILE        write there, packed if it ends in .gz or .zst; default:
                   standard output. Files to be read may be packed, too
`
