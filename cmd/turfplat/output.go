package main

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"os"
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
	if o.output != "" {
		return replaceFile(o.output, result, o.keeps)
	}
	if o.lines {
		w := bufio.NewWriter(o.out)
		err := result(w)
		return errors.Join(err, w.Flush())
	}
	var whole bytes.Buffer
	if err := result(&whole); err != nil {
		return err
	}
	_, err := whole.WriteTo(o.out)
	return err
}

func (o *order) keeps(err error) bool { return err == nil || o.lines && err == errRefused }

// replaceFile writes a file beside its place and moves it there if it is to
// be kept.
func replaceFile(name string, result func(io.Writer) error, keeps func(error) bool) error {
	part := name + ".part"
	f, err := os.Create(part)
	if err != nil {
		return err
	}
	w := bufio.NewWriter(f)
	written := result(w)
	err = errors.Join(w.Flush(), f.Close())
	if err == nil && keeps(written) {
		err = os.Rename(part, name)
	}
	if err != nil || !keeps(written) {
		os.Remove(part)
	}
	if written != nil {
		return written
	}
	return err
}
