package yard

import (
	"bufio"
	"encoding/binary"
	"errors"
	"os"
	"path/filepath"
	"time"
)

const (
	// segmentSize is how large a segment grows before the next is begun.
	segmentSize = 32 << 20
	// smallSegment is what is merged with others.
	smallSegment = 4 << 20
	// manySegments is how many there may be before small ones are merged.
	manySegments = 16
	// forsaken is when a segment that was never finished is taken to be of a
	// process that died.
	forsaken = 10 * time.Minute
)

// writing is the segment that this process writes.
type writing struct {
	file *os.File
	to   *bufio.Writer
	size int64
	all  []indexed
}

func newWriting(dir string) (*writing, error) {
	file, err := os.CreateTemp(dir, segmentBeginning+"*"+segmentEnding)
	if err != nil {
		return nil, err
	}
	w := &writing{file: file, to: bufio.NewWriterSize(file, 256<<10)}
	if _, err := w.to.WriteString(segmentFormat); err != nil {
		return nil, errors.Join(err, file.Close())
	}
	w.size = int64(len(segmentFormat))
	return w, nil
}

// add appends an entry.
func (w *writing) add(k Key, head, body []byte) error {
	_, err := w.to.Write(head)
	if err == nil {
		_, err = w.to.Write(body)
	}
	w.all = append(w.all, indexed{numberOf(k[:]), w.size, len(body)})
	w.size += int64(len(head) + len(body))
	return err
}

// close writes the index. A segment that cannot be finished is taken away.
func (w *writing) close() error {
	index := indexOf(w.all)
	end := binary.LittleEndian.AppendUint32([]byte(endMark), uint32(len(w.all))) //nolint:gosec // a segment holds fewer
	index = append(index, end...)
	index = binary.LittleEndian.AppendUint32(index, checksum(index))
	_, err := w.to.Write(index)
	if err == nil {
		err = w.to.Flush()
	}
	if err != nil {
		w.discard()
		return err
	}
	return w.file.Close()
}

func (w *writing) discard() {
	_ = w.file.Close()
	_ = os.Remove(w.file.Name())
}

// merge brings the small segments into one, where there are many.
func (c *Cache) merge() {
	infos := c.list()
	if len(infos) <= manySegments {
		return
	}
	var out *writing
	var merged []string
	for _, info := range infos {
		if info.Size() > smallSegment {
			continue
		}
		s := openSegment(filepath.Join(c.dir, info.Name()), info)
		if s == nil {
			continue // not ours
		}
		if s.whole || time.Since(s.modified) > forsaken {
			if out == nil {
				var err error
				if out, err = newWriting(c.dir); err != nil {
					_ = s.file.Close()
					return
				}
			}
			if out.take(s) != nil {
				_ = s.file.Close()
				out.discard()
				return
			}
			merged = append(merged, s.path)
		}
		_ = s.file.Close() // it was only read
		if out != nil && out.size > segmentSize {
			break
		}
	}
	if out == nil || out.close() != nil {
		return
	}
	for _, path := range merged {
		_ = os.Remove(path) // another process may have done so
	}
}

// take copies the whole entries of a segment.
func (w *writing) take(s *segment) error {
	for i := range s.entries() {
		text, ok := s.read(s.entry(i))
		if !ok {
			continue
		}
		if err := w.add(Key(text[4:4+len(Key{})]), text[:headerLength], text[headerLength:]); err != nil {
			return err
		}
	}
	return nil
}

// trim removes the segments that were of no use for longest, until the rest is
// within the limit. The newest stays.
func (c *Cache) trim() {
	total := int64(0)
	for i, info := range c.list() {
		if total += info.Size(); total > c.limit && i > 0 {
			_ = os.Remove(filepath.Join(c.dir, info.Name())) // another process may have done so
		}
	}
}
