package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"driploop/model/yard"
	"driploop/reports"
)

// partFile is the file of one part, read record by record.
type partFile struct {
	path    string
	file    *os.File
	decoder *json.Decoder
	part    part
	tool    struct{ Version, Rules string }
	errors  []struct {
		Path         string
		Line, Column int
		Says         string
	}
	notes []string

	text   json.RawMessage // of the record that comes next; nil at the end
	record partRecord
}

// openPart reads a file up to its first record.
func openPart(path string) (p *partFile, err error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, errors.New(yard.Reason(err))
	}
	p = &partFile{path: path, file: file, decoder: json.NewDecoder(file)}
	defer func() {
		if err != nil {
			_ = file.Close()
		}
	}()
	if err := p.expect(json.Delim('{')); err != nil {
		return nil, err
	}
	var format, word string
	for _, entry := range []struct {
		name string
		into any
	}{{"format", &format}, {"tool", &p.tool}, {"part", &word}} {
		if err := p.expect(entry.name); err != nil {
			return nil, err
		}
		if err := p.decoder.Decode(entry.into); err != nil {
			return nil, cutOff(err)
		}
	}
	if format != reports.JSONFormat || p.part.Set(word) != nil {
		return nil, errNoPart
	}
	if err := errors.Join(p.expect("records"), p.expect(json.Delim('['))); err != nil {
		return nil, errNoPart
	}
	return p, p.advance()
}

func (p *partFile) expect(want json.Token) error {
	got, err := p.decoder.Token()
	if err != nil {
		return cutOff(err)
	}
	if got != want {
		return errNoPart
	}
	return nil
}

// advance reads the next record or, behind the last, what ends the file.
func (p *partFile) advance() (err error) {
	p.text, p.record = nil, partRecord{}
	if !p.decoder.More() {
		return p.finish()
	}
	if err := p.decoder.Decode(&p.text); err != nil {
		return cutOff(err)
	}
	p.record, err = unmarshalRecord(p.text)
	return err
}

// finish reads what stands behind the records, to the end: a file that was cut
// off, or a run that was stopped, is not taken for whole.
func (p *partFile) finish() error {
	err := errors.Join(p.expect(json.Delim(']')), p.expect("errors"))
	if err != nil {
		return err
	}
	if err := p.decoder.Decode(&p.errors); err != nil {
		return cutOff(err)
	}
	if p.decoder.More() {
		if err := p.expect("notes"); err != nil {
			return err
		}
		if err := p.decoder.Decode(&p.notes); err != nil {
			return cutOff(err)
		}
	}
	for _, note := range p.notes {
		if strings.HasPrefix(note, stoppedEarly) {
			return fmt.Errorf("was %s", note)
		}
	}
	return p.expect(json.Delim('}'))
}

// cutOff says of an error of JSON what it means for a part.
func cutOff(err error) error {
	if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		return errors.New("is cut off before its end")
	}
	return fmt.Errorf("cannot be read: %w", err)
}
