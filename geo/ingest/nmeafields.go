package ingest

import "time"

// sentenceReaders are the sentences of which something is wanted. Each returns
// false if a field that it needs cannot be read.
var sentenceReaders = map[string]func(n *nmeaReader, s nmeaSentence, line int) bool{
	"GGA": (*nmeaReader).readGGA,
	"RMC": (*nmeaReader).readRMC,
	"GST": (*nmeaReader).readGST,
	"ZDA": (*nmeaReader).readZDA,
}

// readGGA: time, latitude, N or S, longitude, E or W, quality, satellites,
// HDOP. A quality of 0 means that the position, if there is one, is invalid.
func (n *nmeaReader) readGGA(s nmeaSentence, line int) bool {
	n.gga, n.epoch.gga = true, true
	quality, ok := plainCount(s.field(6))
	if !ok || quality > mostQuality {
		return false
	}
	if len(s.field(2)) == 0 && len(s.field(4)) == 0 {
		n.epoch.void = true
		return true
	}
	if !n.position(s, 2) {
		return false
	}
	f := &n.epoch.fix
	f.Quality = quality
	f.Satellites = n.log.satellites(s.field(7), line)
	f.HDOP = n.log.positive("hdop", s.field(8), line)
	return true
}

// readRMC: time, status, latitude, N or S, longitude, E or W, speed, course,
// date as ddmmyy. A status of V means that there is no position.
func (n *nmeaReader) readRMC(s nmeaSentence, _ int) bool {
	n.epoch.rmc = true
	if !n.date(s.field(9)) {
		return false
	}
	switch {
	case n.gga:
		return true
	case string(s.field(2)) != "A":
		n.epoch.void = true
		return true
	}
	return n.position(s, 3)
}

// readGST: time, the rms of the ranges, semi-axes and direction of the error
// ellipse, and the errors of latitude, longitude and height, all 1 sigma in
// metres.
func (n *nmeaReader) readGST(s nmeaSentence, line int) bool {
	var v [4]float64
	for i, field := range [...]int{6, 7, 3, 4} {
		v[i] = n.log.positive("accuracy", s.field(field), line)
	}
	n.epoch.fix.Sigma = axisSigma(v[0], v[1])
	if n.epoch.fix.Sigma == 0 {
		n.epoch.fix.Sigma = axisSigma(v[2], v[3])
	}
	return true
}

// readZDA: time, day, month, year.
func (n *nmeaReader) readZDA(s nmeaSentence, _ int) bool {
	if len(s.field(2)) == 0 {
		return true
	}
	return n.dayOf(string(s.field(4))+"-"+string(s.field(3))+"-"+string(s.field(2)), "2006-01-02")
}

// date reads ddmmyy. Two digits cannot say the century: GPS began in 1980.
func (n *nmeaReader) date(text []byte) bool {
	if len(text) == 0 {
		return true
	}
	if len(text) != 6 || digitsAt(text) != 6 {
		return false
	}
	century := "20"
	if string(text[4:]) >= "80" {
		century = "19"
	}
	return n.dayOf(string(text[:4])+century+string(text[4:]), "02012006")
}

func (n *nmeaReader) dayOf(text, layout string) bool {
	day, err := time.Parse(layout, text)
	if err != nil {
		return false
	}
	n.epoch.day = int(day.Unix() / 86400)
	return true
}

// position reads the position of the epoch, which stands from field i on.
func (n *nmeaReader) position(s nmeaSentence, i int) bool {
	lat, okLat := s.degrees(i, 'N', 'S')
	lon, okLon := s.degrees(i+2, 'E', 'W')
	if !okLat || !okLon {
		return false
	}
	n.epoch.fix.At = [2]float64{lon, lat}
	n.epoch.placed = true
	return true
}
