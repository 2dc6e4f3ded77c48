package yard

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"hash/crc32"
	"io"
	"os"
	"sort"
	"sync/atomic"
	"time"
)

// A segment begins with its format. Entries follow, each a header and a body, and
// at the end of a segment that was finished an index of them. All numbers are
// little-endian.
//
//	entry   mark 4, key 32, day 10, length of the body 4, SHA-256 of key, day and body 32, CRC-32C of this header 4; body
//	index   for each entry, by their numbers: first 8 bytes of the key, place of its header 8, length of the body 4
//	end     mark 4, entries 4, CRC-32C of the index and of these two 4
const (
	segmentFormat = "driploop.cache/2\n"
	entryMark     = "dlE2"
	endMark       = "dlX2"

	segmentBeginning = "driploop-"
	segmentEnding    = ".segment"

	dayLength    = len("2006-01-02")
	headerLength = 4 + sha256.Size + dayLength + 4 + sha256.Size + 4
	indexLength  = 8 + 8 + 4
	endLength    = 4 + 4 + 4
)

func checksum(text []byte) uint32 { return crc32.Checksum(text, crc32.MakeTable(crc32.Castagnoli)) }

// header is what stands before the body of an entry.
func header(k Key, day string, body []byte) []byte {
	h := make([]byte, 0, headerLength)
	h = append(append(h, entryMark...), k[:]...)
	h = append(h, day...)
	h = append(h, make([]byte, dayLength-len(day))...)
	h = binary.LittleEndian.AppendUint32(h, uint32(len(body))) //nolint:gosec // bounded by longestEntry
	sum := seal(h[4:4+sha256.Size+dayLength], body)
	h = append(h, sum[:]...)
	return binary.LittleEndian.AppendUint32(h, checksum(h))
}

// seal is the checksum of an entry: it holds for its key and day only.
func seal(keyAndDay, body []byte) [sha256.Size]byte {
	sum := sha256.New()
	sum.Write(keyAndDay)
	sum.Write(body)
	return [sha256.Size]byte(sum.Sum(nil))
}

// indexed is one line of an index.
type indexed struct {
	number uint64 // first bytes of the key
	at     int64  // place of the header
	length int    // of the body
}

func numberOf(k []byte) uint64 { return binary.LittleEndian.Uint64(k) }

// segment is one that is read.
type segment struct {
	path     string
	file     *os.File
	size     int64
	modified time.Time
	whole    bool // it was finished
	index    []byte
	used     atomic.Bool
}

// openSegment opens a segment, or returns nil where there is none of this format.
func openSegment(path string, info os.FileInfo) *segment {
	file, err := os.Open(path)
	if err != nil {
		return nil
	}
	s := &segment{path: path, file: file, size: info.Size(), modified: info.ModTime()}
	start := make([]byte, len(segmentFormat))
	if _, err := io.ReadFull(file, start); err != nil || string(start) != segmentFormat {
		_ = file.Close()
		return nil
	}
	if s.readIndex(); !s.whole {
		s.scan()
	}
	return s
}

// readIndex reads the index of a segment that was finished.
func (s *segment) readIndex() {
	end := make([]byte, endLength)
	if _, err := s.file.ReadAt(end, s.size-int64(endLength)); err != nil || string(end[:4]) != endMark {
		return
	}
	length := int64(binary.LittleEndian.Uint32(end[4:])) * indexLength
	if length > s.size-int64(endLength)-int64(len(segmentFormat)) {
		return
	}
	index := make([]byte, length)
	if _, err := s.file.ReadAt(index, s.size-int64(endLength)-length); err != nil {
		return
	}
	if checksum(append(index, end[:8]...)) != binary.LittleEndian.Uint32(end[8:]) {
		return
	}
	s.whole, s.index = true, index
}

// scan makes an index of a segment that was never finished: another process
// writes it, or died. It ends at the first header that is not whole.
func (s *segment) scan() {
	var all []indexed
	head := make([]byte, headerLength)
	for at := int64(len(segmentFormat)); ; {
		if _, err := s.file.ReadAt(head, at); err != nil || !isHeader(head) {
			break
		}
		e := indexed{number: numberOf(head[4:]), at: at, length: bodyLength(head)}
		at += int64(headerLength + e.length)
		if at > s.size {
			break
		}
		all = append(all, e)
	}
	s.index = indexOf(all)
}

func isHeader(h []byte) bool {
	return string(h[:4]) == entryMark && checksum(h[:headerLength-4]) == binary.LittleEndian.Uint32(h[headerLength-4:])
}

func bodyLength(h []byte) int { return int(binary.LittleEndian.Uint32(h[4+sha256.Size+dayLength:])) }

// indexOf is the index of some entries.
func indexOf(all []indexed) []byte {
	sort.SliceStable(all, func(i, j int) bool { return all[i].number < all[j].number })
	index := make([]byte, 0, len(all)*indexLength)
	for _, e := range all {
		index = binary.LittleEndian.AppendUint64(index, e.number)
		index = binary.LittleEndian.AppendUint64(index, uint64(e.at))     //nolint:gosec // places are not negative
		index = binary.LittleEndian.AppendUint32(index, uint32(e.length)) //nolint:gosec // bounded by longestEntry
	}
	return index
}

// entries is how many there are.
func (s *segment) entries() int { return len(s.index) / indexLength }

func (s *segment) entry(i int) indexed {
	line := s.index[i*indexLength:]
	return indexed{
		number: binary.LittleEndian.Uint64(line),
		at:     int64(binary.LittleEndian.Uint64(line[8:])), //nolint:gosec // a wrong place is read as nothing
		length: int(binary.LittleEndian.Uint32(line[16:])),
	}
}

// get returns the body of an entry for a day, if one is there and whole.
func (s *segment) get(k Key, day string) ([]byte, bool) {
	number := numberOf(k[:])
	first := sort.Search(s.entries(), func(i int) bool { return s.entry(i).number >= number })
	for i := first; i < s.entries() && s.entry(i).number == number; i++ {
		text, ok := s.read(s.entry(i))
		if !ok || !bytes.Equal(text[4:4+len(k)], k[:]) {
			continue
		}
		if of := bytes.TrimRight(text[4+len(k):4+len(k)+dayLength], "\x00"); len(of) > 0 && string(of) != day {
			continue
		}
		s.used.Store(true)
		return text[headerLength:], true
	}
	return nil, false
}

// read returns header and body of an entry whose checksums hold.
func (s *segment) read(e indexed) ([]byte, bool) {
	if e.length > longestEntry || e.at < 0 || e.at+int64(headerLength+e.length) > s.size {
		return nil, false
	}
	text := make([]byte, headerLength+e.length)
	if _, err := s.file.ReadAt(text, e.at); err != nil || !isHeader(text) || bodyLength(text) != e.length {
		return nil, false
	}
	keyAndDay, rest := text[4:4+sha256.Size+dayLength], text[4+sha256.Size+dayLength+4:]
	return text, seal(keyAndDay, text[headerLength:]) == [sha256.Size]byte(rest[:sha256.Size])
}
