// Package html writes a survey report as one HTML file that needs nothing else:
// no network, no script to be read, everything from the record escaped.
package html

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/base64"
	"fmt"
	"html/template"
	"io"
	"strings"

	"driploop/model/verdict"
	"driploop/reports"
	"driploop/reports/survey"
)

//go:embed *.tmpl style.css script.js
var files embed.FS

// Write writes one report.
func Write(w io.Writer, s *survey.Survey) error {
	var drawing strings.Builder
	if err := s.Diagram.SVG(&drawing); err != nil {
		return err
	}
	wide, high := s.Diagram.Size()
	return write(w, "report.tmpl", page{
		Survey:  s,
		Drawing: template.HTML(drawing.String()), // the diagram escapes what it draws
		Wide:    wide > high,
	})
}

// page is what the template of a report is given.
type page struct {
	*survey.Survey
	Drawing template.HTML
	Wide    bool
}

// Style is the style sheet, which stands in the page.
func (page) Style() (template.CSS, error) { return styleSheet() }

// Script is the script, which stands in the page.
func (page) Script() (template.JS, error) {
	text, err := files.ReadFile("script.js")
	return template.JS(text), err
}

// Policy allows the page its own style and its own script, and nothing else.
func (page) Policy() (string, error) {
	text, err := files.ReadFile("script.js")
	sum := sha256.Sum256(text)
	return "default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) +
		"'; base-uri 'none'; form-action 'none'", err
}

func styleSheet() (template.CSS, error) {
	text, err := files.ReadFile("style.css")
	return template.CSS(text), err
}

// write renders a template whole before any of it is written.
func write(w io.Writer, name string, data any) error {
	t, err := template.New(name).Funcs(functions()).ParseFS(files, "*.tmpl")
	if err != nil {
		return err
	}
	var text bytes.Buffer
	if err := t.Execute(&text, data); err != nil {
		return err
	}
	_, err = w.Write(text.Bytes())
	return err
}

func functions() template.FuncMap {
	return template.FuncMap{
		"list":   func(words []string) string { return strings.Join(words, ", ") },
		"lines":  func(words []string) string { return strings.Join(words, "; ") },
		"plural": reports.Plural,
		"upper":  strings.ToUpper,
		"begin":  reports.Capital,
		"count":  func(c verdict.Counts, o string) int { return c[verdict.Outcome(o)] },
		"bar":    func(share float64) string { return fmt.Sprintf("%.1f", 200*share) },
		"named":  func(title string, of ...any) named { return named{title, of} },
		"sheet":  func(s reports.Sheet, name string) labelledSheet { return labelledSheet{s, name} },
	}
}

// named hands a template a title with what it is about.
type named struct {
	Title string
	Of    []any
}

// labelledSheet is a table with the name by which it is announced.
type labelledSheet struct {
	reports.Sheet
	Name string
}
