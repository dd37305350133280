package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// checkOutput refuses an output file that is one of the inputs.
func (o *order) checkOutput(inputs ...string) error {
	if o.output == "" {
		return nil
	}
	target, err := os.Stat(o.output)
	if err != nil {
		return nil // not there yet
	}
	if target.IsDir() {
		return usageErrorf("%s is a folder, name a file", o.output)
	}
	for _, file := range inputs {
		if source, err := os.Stat(file); err == nil && os.SameFile(source, target) {
			return usageErrorf("%s is both input and output: name another output", o.output)
		}
	}
	return nil
}

// write lets a command write its result: to standard output, or to
// output.part, which takes the output's name when all went well. Nothing is
// written of a result that fails, but where sites are lines the good ones are
// kept when others are refused.
func (o *order) write(result func(io.Writer) error) error {
	switch {
	case o.output == "":
		return o.pour(o.out, result)
	case isStream(o.output):
		return o.pourInto(o.output, result)
	}
	return replaceFile(o.output, result, o.keeps)
}

// pour writes a result where nothing can be taken back: sites that are lines
// as they come, else the whole once it is known to be good.
func (o *order) pour(to io.Writer, result func(io.Writer) error) error {
	if o.lines {
		w := bufio.NewWriter(to)
		err := result(w)
		return errors.Join(err, w.Flush())
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

// replaceFile writes a file beside its place and moves it there if it is to
// be kept. A result that is at fault and empty is not: nothing good is lost to
// it. Where the name is a link, the file it leads to is replaced.
func replaceFile(name string, result func(io.Writer) error, keeps func(error) bool) error {
	place := name
	if target, err := filepath.EvalSymlinks(name); err == nil {
		place = target
	}
	part := place + ".part"
	f, err := os.Create(part)
	if err != nil {
		return outputError(name, err)
	}
	w := bufio.NewWriter(f)
	written := result(w)
	err = w.Flush()
	size, _ := f.Seek(0, io.SeekCurrent)
	err = errors.Join(err, f.Close())
	kept := keeps(written) && (written == nil || size > 0)
	if err == nil && kept {
		err = os.Rename(part, place)
	}
	if err != nil || !kept {
		os.Remove(part)
	}
	if written != nil {
		return written
	}
	return outputError(name, err)
}

// outputError names the output in the words of the command line where a file
// could not be opened or written.
func outputError(name string, err error) error {
	if bare := pathless(err); bare != err {
		return fmt.Errorf("%s: cannot be written: %w", name, bare)
	}
	return err
}
