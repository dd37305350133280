package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"iter"
	"os"

	"example.org/turfplat/cmd/turfplat/packing"
	"example.org/turfplat/geo/ingest"
	"example.org/turfplat/zones"
)

// standing is how far a run came that broke off.
type standing struct {
	at             int64  // where its output ends with a whole line; 0 = begin anew
	rest           []byte // of the last site, whose lines break off
	sites, refused int
	whole          bool // what there is may lack nothing: no part was left
}

var errOtherInput = errors.New("does not come of this input and these flags: run again without --resume")

// refuseResume refuses --resume where a run cannot be gone on with.
func (o *order) refuseResume(forMachines bool, how string) error {
	switch {
	case !o.resume:
		return nil
	case !o.lines:
		return usageErrorf("--resume goes on with sites a line: add --lines")
	case o.output == "" || isStream(o.output):
		return usageErrorf("--resume goes on with FILE.part: name FILE with -o, as before")
	case !forMachines:
		return usageErrorf("--resume goes on with lines for machines: %s", how)
	}
	return nil
}

// standing finds out how far the run that left the output's part file came,
// and takes its items from next. Without a part file it was whole, or never
// was: then an output that is there is gone on with, in a copy. Items are told
// by their ids; where two in a row have the same, and at the end, they are made
// once more and must give the same.
func (r route[T]) standing(o *order, next func() (T, bool)) (standing, error) {
	file := newFile(o.output)
	done, err := r.standingIn(o, file.part(), file.part(), next)
	if !errors.Is(err, fs.ErrNotExist) {
		return done, err
	}
	done, err = r.standingIn(o, file.place, o.output, next)
	if errors.Is(err, fs.ErrNotExist) {
		o.tell("hint", fmt.Sprintf("there is neither %s nor %s: beginning at the first site", file.part(), o.output))
		return standing{}, nil
	}
	if err == nil && done.at > 0 {
		done.whole = true
		err = copyStart(file.place, file.part(), done.at)
	}
	return done, err
}

// standingIn finds out how far a file came, which is told of by a name.
func (r route[T]) standingIn(o *order, file, name string, next func() (T, bool)) (standing, error) {
	f, err := os.Open(file)
	if err != nil {
		return standing{}, err
	}
	defer f.Close()
	lines := packing.WholeLines(f, packing.Of(o.output))
	if r.records != nil {
		lines = r.records(lines)
	}
	done, err := r.passOver(stints(lines, r.mark, r.single), next)
	if err != nil {
		return standing{}, fmt.Errorf("%s %w", name, err)
	}
	o.tell("hint", fmt.Sprintf("%s: going on after %s", name, plural(done.sites, "site")))
	if done.refused > 0 {
		o.tell("warning", fmt.Sprintf("%s: %s so far refused, told by the run that broke off", name, plural(done.refused, "site")))
	}
	return done, nil
}

// copyStart copies the first bytes of a file into another one.
func copyStart(from, to string, bytes int64) error {
	source, err := os.Open(from)
	if err != nil {
		return err
	}
	defer source.Close()
	target, err := openAt(to, 0)
	if err != nil {
		return outputError(to, err)
	}
	_, err = io.CopyN(target, source, bytes)
	return errors.Join(err, target.Close())
}

// passOver takes the items that the stints are of.
func (r route[T]) passOver(stints iter.Seq[stint], next func() (T, bool)) (standing, error) {
	var done standing
	pull, stop := iter.Pull(stints)
	defer stop()
	s, more := pull()
	if more && len(r.head) > 0 {
		if !bytes.Equal(s.text, r.head) {
			return done, errOtherInput
		}
		s, more = pull()
	}
	for more {
		following, another := pull()
		if err := r.find(s, another, another && following.id != s.id, next, &done); err != nil {
			return done, err
		}
		s, more = following, another
	}
	return done, nil
}

// find takes items up to the one that a stint is of. Those before it were
// refused, for they left nothing. Unless it is sure that the first of the
// stint's id is the one, it is made again; only of the last may lines be
// missing.
func (r route[T]) find(s stint, more, sure bool, next func() (T, bool), done *standing) error {
	for item, ok := next(); ok; item, ok = next() {
		if r.id(item) == s.id {
			rest, same := []byte(nil), sure
			if !sure {
				rest, same = bytes.CutPrefix(r.make(item).text, s.text)
			}
			if same && (len(rest) == 0 || !more) {
				done.at, done.rest = s.end, rest
				if s.refused {
					done.refused++
				} else {
					done.sites++
				}
				return nil
			}
		}
		done.refused++
	}
	return errOtherInput
}

// siteLine is whose line a site file is.
func siteLine(line []byte) mark {
	d := json.NewDecoder(bytes.NewReader(line))
	d.Token()
	for d.More() {
		name, _ := d.Token()
		var value json.RawMessage
		if d.Decode(&value) != nil {
			break
		}
		if name == "site" {
			return mark{id: zones.IDOf(&ingest.Collection{Members: []ingest.Member{{Name: "site", Value: value}}})}
		}
	}
	return mark{}
}

// documentLine is whose line a document of one site is.
func documentLine(line []byte) mark {
	var d struct {
		Sites []struct {
			ID     string `json:"id"`
			Usable *bool  `json:"usable"`
		} `json:"sites"`
	}
	if json.Unmarshal(line, &d) != nil || len(d.Sites) != 1 {
		return mark{}
	}
	s := d.Sites[0]
	return mark{id: s.ID, refused: s.Usable != nil && !*s.Usable}
}
