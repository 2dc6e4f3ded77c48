package record

import (
	"strconv"
	"strings"

	"driploop/model/verdict"
)

// paths makes the paths of single values, many of which share one allocation:
// whoever keeps one keeps all of them.
type paths struct{ all strings.Builder }

// pathsAtOnce is the room for paths that is made at once, in bytes.
const pathsAtOnce = 16 << 10

// key returns the path of a key of the mapping at a path.
func (p *paths) key(path, key string) string {
	if path == "" {
		return key
	}
	p.room(len(path) + 1 + len(key))
	from := p.all.Len()
	p.all.WriteString(path)
	p.all.WriteByte('.')
	p.all.WriteString(key)
	return p.all.String()[from:]
}

// item returns the path of an item of the list at a path.
func (p *paths) item(path string, i int) string {
	var digits [20]byte
	number := strconv.AppendInt(digits[:0], int64(i), 10)
	p.room(len(path) + 2 + len(number))
	from := p.all.Len()
	p.all.WriteString(path)
	p.all.WriteByte('[')
	p.all.Write(number)
	p.all.WriteByte(']')
	return p.all.String()[from:]
}

// room makes sure that what is written next does not move what was.
func (p *paths) room(size int) {
	if p.all.Cap()-p.all.Len() < size {
		p.all.Reset()
		p.all.Grow(max(size, pathsAtOnce))
	}
}

// place is where a path stands, in little room: a file has at most MaxBytes.
type place struct {
	path                             string
	line, column, endLine, endColumn int32
}

func (p *place) at() verdict.Range {
	return verdict.Range{
		Start: verdict.Position{Line: int(p.line), Column: int(p.column)},
		End:   verdict.Position{Line: int(p.endLine), Column: int(p.endColumn)},
	}
}

// places are all places of a record. Aliases bring more than the length of the
// file tells, so their number is known at the end only.
type places struct {
	full [][]place
	last []place
}

const placesAtOnce = 768 // 30 KB

func (p *places) add(path string, at verdict.Range) {
	if len(p.last) == cap(p.last) {
		p.full, p.last = append(p.full, p.last), make([]place, 0, placesAtOnce)
	}
	p.last = append(p.last, place{path, int32(at.Start.Line), int32(at.Start.Column), int32(at.End.Line), int32(at.End.Column)})
}

// byPath returns a map of the places.
func (p *places) byPath() map[string]verdict.Range {
	m := make(map[string]verdict.Range, len(p.full)*placesAtOnce+len(p.last))
	for _, part := range append(p.full, p.last) {
		for i := range part {
			m[part[i].path] = part[i].at()
		}
	}
	return m
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

func index(path string, i int) string { return path + "[" + strconv.Itoa(i) + "]" }
