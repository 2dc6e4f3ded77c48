package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/pflag"
)

// destination is where the output of a command goes: a file, or "" or "-" for
// standard output.
type destination string

// addTo gives a command the flag for it.
func (d *destination) addTo(flags *pflag.FlagSet) {
	flags.StringVarP((*string)(d), "output", "o", "", "write to this file, whole or not at all (default, or -: standard output)")
}

// isFile tells whether the output goes to a file.
func (d destination) isFile() bool { return d != "" && d != standardOutput }

// standardOutput is the path of standard output.
const standardOutput = "-"

// to has work write to a destination. A file is there whole, or as it was before:
// it is written beside its place, brought to the disk, and then renamed.
func (s *session) to(d destination, work func(io.Writer) error) error {
	if !d.isFile() {
		return work(s.out)
	}
	if err := replace(string(d), work); err != nil {
		return fmt.Errorf("cannot write %s: %w", d, pathless(err))
	}
	return nil
}

// keep writes a new file, never over an old one.
func (s *session) keep(d destination, text []byte) error {
	if d.isFile() {
		if _, err := os.Lstat(string(d)); !errors.Is(err, fs.ErrNotExist) {
			return fmt.Errorf("%s is there already; name a new file", d)
		}
	}
	return s.to(d, writing(text))
}

// rewrite writes a file anew.
func (s *session) rewrite(path string, text []byte) error {
	return s.to(destination(path), writing(text))
}

func writing(text []byte) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := w.Write(text)
		return err
	}
}

func replace(path string, work func(io.Writer) error) error {
	info, missing := os.Stat(path)
	switch {
	case missing != nil:
	case info.IsDir():
		return errors.New("it is a folder; name a file")
	case !info.Mode().IsRegular():
		return into(path, os.O_WRONLY, work) // a device or a pipe cannot be replaced
	default:
		resolved, err := filepath.EvalSymlinks(path)
		if err != nil {
			return err
		}
		path = resolved
	}
	part := filepath.Join(filepath.Dir(path), fmt.Sprintf(".%s.%d.part", filepath.Base(path), os.Getpid()))
	err := into(part, os.O_WRONLY|os.O_CREATE|os.O_EXCL, work)
	if errors.Is(err, fs.ErrExist) {
		return err
	}
	if err == nil && missing == nil {
		err = os.Chmod(part, info.Mode().Perm())
	}
	if err == nil {
		err = os.Rename(part, path)
	}
	if err != nil {
		_ = os.Remove(part) // the first error is the one to tell
	}
	return err
}

// into opens a file, has work write to it and brings it to the disk.
func into(path string, how int, work func(io.Writer) error) (err error) {
	f, err := os.OpenFile(path, how, 0o666)
	if err != nil {
		return err
	}
	defer func() {
		if closing := f.Close(); err == nil {
			err = closing
		}
	}()
	if err := work(f); err != nil {
		return err
	}
	if info, err := f.Stat(); err != nil || !info.Mode().IsRegular() {
		return err
	}
	return f.Sync()
}

// pathless is an error of the file system without the path, which is told anyway.
func pathless(err error) error {
	var of *fs.PathError
	if errors.As(err, &of) {
		return of.Err
	}
	var link *os.LinkError
	if errors.As(err, &link) {
		return link.Err
	}
	return err
}
