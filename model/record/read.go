package record

import (
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
	// Again, of what was opened: the name may stand for something else by now.
	if info, err = file.Stat(); err != nil {
		return nil, fmt.Errorf("read record: %w", err)
	}
	if err := ordinary(path, info.Mode()); err != nil {
		return nil, err
	}
	return ReadFrom(path, file)
}

// ErrTooLarge is the error of a file beyond MaxBytes.
var ErrTooLarge = errors.New("too large for a record")

// ReadFrom returns the bytes of a record from a stream, MaxBytes at most; the
// name is for messages.
func ReadFrom(name string, from io.Reader) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(from, MaxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("read record: %w", err)
	}
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
