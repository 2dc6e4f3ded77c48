package reports

import (
	"bytes"
	"io"
	"os"
)

// spool keeps what can be written only when all is known: a little in memory, more
// in a file that is gone with the program. Its zero value is empty.
type spool struct {
	size   int64
	memory bytes.Buffer
	file   *os.File
	begun  bool // reading
}

// spoolMemory is how much is kept in memory, in bytes.
const spoolMemory = 8 << 20

func (s *spool) write(text []byte) error {
	s.size += int64(len(text))
	if s.file == nil && s.memory.Len()+len(text) > spoolMemory {
		file, err := os.CreateTemp("", "driploop-*")
		if err != nil {
			return err
		}
		s.file = file
		_ = os.Remove(file.Name()) // where an open file can be removed, nothing is ever left of it
		if _, err := s.memory.WriteTo(file); err != nil {
			return err
		}
	}
	if s.file == nil {
		_, err := s.memory.Write(text)
		return err
	}
	_, err := s.file.Write(text)
	return err
}

// copyTo copies on to a place, from where the last copy ended.
func (s *spool) copyTo(w io.Writer, place int64) error {
	if !s.begun {
		s.begun, s.size = true, 0
		if s.file != nil {
			if _, err := s.file.Seek(0, io.SeekStart); err != nil {
				return err
			}
		}
	}
	from := io.Reader(&s.memory)
	if s.file != nil {
		from = s.file
	}
	n, err := io.CopyN(w, from, place-s.size)
	s.size += n
	return err
}

func (s *spool) close() {
	if s.file != nil {
		_ = s.file.Close()
		_ = os.Remove(s.file.Name()) // where it was held open until now
	}
}
