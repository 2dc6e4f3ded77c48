package record

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"syscall"
)

// Read returns the bytes of a record's file. It refuses what is no ordinary
// file, and reads no more than MaxBytes.
func Read(path string) ([]byte, error) {
	// Stat first: opening a named pipe waits for its writer.
	info, err := os.Stat(path)
	if err != nil {
		return nil, fmt.Errorf("read record: %w", err)
	}
	if err := ordinary(path, info.Mode()); err != nil {
		return nil, err
	}
	// Without waiting all the same, in case the name was swapped since.
	file, err := os.OpenFile(path, os.O_RDONLY|syscall.O_NONBLOCK, 0)
	if err != nil {
		return nil, fmt.Errorf("read record: %w", err)
	}
	defer file.Close()
	return readWhole(path, file)
}

// readWhole reads a file that was opened, and refuses one that is written
// meanwhile.
func readWhole(path string, file fs.File) ([]byte, error) {
	// Of what was opened: the name may stand for something else by now.
	info, err := file.Stat()
	if err != nil {
		return nil, fmt.Errorf("read record: %w", err)
	}
	if err := ordinary(path, info.Mode()); err != nil {
		return nil, err
	}
	text, err := readSized(path, file, info.Size())
	if err != nil {
		return nil, err
	}
	after, err := file.Stat()
	if err != nil {
		return nil, fmt.Errorf("read record: %w", err)
	}
	size := info.Size() // 0 of what the system makes up while it is read
	if after.Size() != size || size > 0 && size != int64(len(text)) || !after.ModTime().Equal(info.ModTime()) {
		return nil, fmt.Errorf("read record: %w", ErrChanged)
	}
	return text, nil
}

// ErrChanged is the error of a file that was written while it was read: what was
// read of it may be half the old and half the new, and judge as whole.
var ErrChanged = errors.New("it changed while it was read; judge it again when nobody writes to it")

// ErrTooLarge is the error of a file beyond MaxBytes.
var ErrTooLarge = errors.New("too large for a record")

// ReadFrom returns the bytes of a record from a stream, MaxBytes at most; the
// name is for messages.
func ReadFrom(name string, from io.Reader) ([]byte, error) { return readSized(name, from, 0) }

// readSized is ReadFrom of a stream that may have so many bytes.
func readSized(name string, from io.Reader, size int64) ([]byte, error) {
	var into bytes.Buffer
	into.Grow(int(min(max(size, 0), MaxBytes)) + bytes.MinRead)
	if _, err := into.ReadFrom(io.LimitReader(from, MaxBytes+1)); err != nil {
		return nil, fmt.Errorf("read record: %w", err)
	}
	text := into.Bytes()
	if len(text) > MaxBytes {
		return nil, fmt.Errorf("read record: %s is %w: it has more than %d MiB", name, ErrTooLarge, MaxBytes>>20)
	}
	return text, nil
}

// ordinary refuses folders, devices, pipes and sockets.
func ordinary(path string, mode fs.FileMode) error {
	var what string
	switch {
	case mode.IsRegular():
		return nil
	case mode.IsDir():
		what = "a folder"
	case mode&fs.ModeNamedPipe != 0:
		what = "a named pipe"
	case mode&fs.ModeSocket != 0:
		what = "a socket"
	case mode&fs.ModeDevice != 0:
		what = "a device"
	default:
		what = "no ordinary file"
	}
	return fmt.Errorf("read record: %s is %s; name a file", path, what)
}
