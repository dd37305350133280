package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"example.org/turfplat/cmd/turfplat/packing"
)

// checkOutput refuses to write where a folder is, or one of the files that are
// read.
func (o *order) checkOutput(name string) error {
	target, err := os.Stat(name)
	if err != nil {
		return nil // not there yet, or standard output
	}
	if target.IsDir() {
		return usageErrorf("%s is a folder, name a file", name)
	}
	for _, file := range o.sources {
		if source, err := os.Stat(file); err == nil && os.SameFile(source, target) {
			return usageErrorf("%s is both input and output: name another output", name)
		}
	}
	return nil
}

// write lets a command write its result: to standard output, or to
// output.part, which takes the output's name when all went well. Nothing is
// written of a result that fails, but where sites are lines the good ones are
// kept when others are refused. A file is packed if its name says so.
func (o *order) write(result func(io.Writer) error) error { return o.writeTo(o.output, 0, result) }

// writeTo does the same to an output of a name, after the first bytes of a part
// of it that an earlier run left.
func (o *order) writeTo(output string, at int64, result func(io.Writer) error) error {
	result = o.packed(output, at, result)
	switch {
	case output == "":
		return o.pour(o.out, result)
	case isStream(output):
		return o.pourInto(output, result)
	}
	f := newFile(output)
	f.keepsPart, f.underway, f.resumable = o.resume, &o.underway, o.resumable
	return f.write(at, result, o.keeps)
}

// packed is a result packed as the output's name says, after its first bytes. To
// those nothing need be added; without them nothing is an empty block.
func (o *order) packed(output string, at int64, result func(io.Writer) error) func(io.Writer) error {
	how := packing.Of(output)
	if how == nil {
		return result
	}
	return func(w io.Writer) error {
		p := packing.NewWriter(w, how)
		err := result(p)
		if !o.keeps(err) || (err != nil || at > 0) && !p.Begun() {
			return err
		}
		if finished := p.Finish(); finished != nil {
			return finished
		}
		return err
	}
}

// pour writes a result where nothing can be taken back: sites that are lines
// as they come, else the whole once it is known to be good.
func (o *order) pour(to io.Writer, result func(io.Writer) error) error {
	if o.lines {
		w := newLingering(to)
		err := result(w)
		return errors.Join(err, w.close())
	}
	var whole bytes.Buffer
	if err := result(&whole); err != nil {
		return err
	}
	_, err := whole.WriteTo(to)
	return err
}

// pourInto writes a result into a device or pipe.
func (o *order) pourInto(name string, result func(io.Writer) error) error {
	f, err := os.OpenFile(name, os.O_WRONLY, 0)
	if err != nil {
		return outputError(name, err)
	}
	err = o.pour(f, result)
	return outputError(name, errors.Join(err, f.Close()))
}

// isStream reports whether an output is a device or a pipe, such as /dev/null:
// a file moved there would take the place of the device itself.
func isStream(name string) bool {
	info, err := os.Stat(name)
	return err == nil && !info.Mode().IsRegular()
}

func (o *order) keeps(err error) bool { return err == nil || o.lines && err == errRefused }

// A replacement is a file written beside its place, and moved there when it is
// whole.
type replacement struct {
	name      string // as it was given
	place     string // where it goes: where the name is a link, what that leads to
	keepsPart bool   // of a result that fails, to go on with later
	resumable bool   // so is the part if the program is interrupted
	underway  *underway
}

func newFile(name string) replacement {
	r := replacement{name: name, place: name, underway: new(underway)}
	if target, err := filepath.EvalSymlinks(name); err == nil {
		r.place = target
	}
	return r
}

func (r replacement) part() string { return r.place + ".part" }

// replaceFile writes a file in place of one that may be there.
func replaceFile(name string, result func(io.Writer) error, keeps func(error) bool) error {
	return newFile(name).write(0, result, keeps)
}

// write writes a result after the first bytes of the part file, and moves that
// to its place if it is to be kept. A result that is at fault and empty is not:
// nothing good is lost to it.
func (r replacement) write(at int64, result func(io.Writer) error, keeps func(error) bool) error {
	r.underway.begin(r.part(), r.keepsPart || r.resumable)
	f, err := openAt(r.part(), at)
	if err != nil {
		return outputError(r.name, err)
	}
	w := bufio.NewWriterSize(f, 1<<16)
	written := result(w)
	err = w.Flush()
	size, _ := f.Seek(0, io.SeekCurrent)
	err = errors.Join(err, f.Close())
	kept := keeps(written) && (written == nil || size > 0)
	r.underway.settle(func() {
		if err == nil && kept {
			err = os.Rename(r.part(), r.place)
		}
		if (err != nil || !kept) && !r.keepsPart {
			os.Remove(r.part())
		}
	})
	if written != nil {
		return written
	}
	return outputError(r.name, err)
}

// openAt opens a file to be written from a place on, and lets go of what stood
// there.
func openAt(name string, at int64) (*os.File, error) {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE, 0o666)
	if err != nil {
		return nil, err
	}
	if err := f.Truncate(at); err != nil {
		return nil, errors.Join(err, f.Close())
	}
	_, err = f.Seek(at, io.SeekStart)
	return f, err
}

// outputError names the output in the words of the command line where a file
// could not be opened or written.
func outputError(name string, err error) error {
	folder := filepath.Dir(name)
	if _, missing := os.Stat(folder); err != nil && errors.Is(missing, fs.ErrNotExist) {
		return usageHint(fmt.Errorf("%s: cannot be written: there is no folder %s", name, folder), "make the folder first")
	}
	if bare := pathless(err); bare != err {
		return fmt.Errorf("%s: cannot be written: %w", name, bare)
	}
	return err
}
