package ingest

import (
	"archive/zip"
	"bufio"
	"bytes"
	"fmt"
	"io"
	"path"
	"strings"
)

// What a KMZ file may ask for. The directory of a zip archive is read whole,
// so the archive itself is bounded; deflate packs tracks 5 to 20 times (common
// practice, no source), and can pack zeros a thousand times.
const (
	kmzBytes      = 64 << 20 // of the archive
	kmzExpansion  = 200      // times that an entry may grow
	kmzAlwaysFine = 1 << 20  // bytes that an entry may have in any case
)

// readKMZ reads the main document of a KMZ archive (OGC 12-007r2 annex C):
// doc.kml, else the first entry that ends in .kml.
func readKMZ(r *bufio.Reader, log *trackLog, limits Limits) *fault {
	archive, err := io.ReadAll(io.LimitReader(r, kmzBytes+1))
	if err != nil {
		return nil // told by the tape
	}
	if len(archive) > kmzBytes {
		return &fault{
			code: "limit_bytes", limit: true,
			text: fmt.Sprintf("has more than %d bytes, the limit for an archive", kmzBytes),
			hint: "save it as KML",
		}
	}
	z, err := zip.NewReader(bytes.NewReader(archive), int64(len(archive)))
	if err != nil {
		return zipFault
	}
	entry := mainDocument(z.File)
	if entry == nil {
		return &fault{code: "kmz_empty", text: "is a zip archive without a .kml file", hint: "unpack it and give the file of the track"}
	}
	return readEntry(entry, log, limits)
}

// mainDocument chooses the entry to read; nil if there is none.
func mainDocument(files []*zip.File) *zip.File {
	var first *zip.File
	for _, f := range files {
		switch name := strings.ToLower(f.Name); {
		case name == "doc.kml":
			return f
		case first == nil && path.Ext(name) == ".kml":
			first = f
		}
	}
	return first
}

func readEntry(entry *zip.File, log *trackLog, limits Limits) *fault {
	r, err := entry.Open()
	if err != nil {
		return zipFault
	}
	defer r.Close()
	most := max(kmzAlwaysFine, kmzExpansion*int(min(entry.CompressedSize64, kmzBytes)))
	t := newTape(r, min(most, limits.Bytes))
	f := readKML(bufio.NewReaderSize(t, 1<<16), log, limits)
	if t.err == nil {
		return f
	}
	log.stopped = 0 // a line would mislead
	if t.err == errTapeLong {
		return &fault{
			code: "limit_bytes", limit: true,
			text: fmt.Sprintf("%s expands to more than %d bytes, the limit", Quoted(entry.Name), t.limit),
		}
	}
	return zipFault
}

var zipFault = &fault{
	code: "zip_damaged",
	text: "zip archive cannot be unpacked",
	hint: "copy or export it again, or save it as KML",
}
