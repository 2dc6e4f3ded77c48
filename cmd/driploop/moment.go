package main

import (
	"errors"
	"time"

	"github.com/spf13/pflag"
)

// moment is a flag that takes a date and time. Reports print no time but this, so
// that the same records give the same bytes.
type moment struct{ time.Time }

func (m *moment) addTo(flags *pflag.FlagSet) {
	flags.Var(m, "at", "the time that reports print, as 2006-01-02T15:04:05Z (default: none)")
}

func (m *moment) String() string {
	if m.IsZero() {
		return ""
	}
	return m.Format(time.RFC3339)
}

// Type names the kind of value in help texts.
func (m *moment) Type() string { return "time" }

// Set reads a date and time of RFC 3339.
func (m *moment) Set(text string) error {
	at, err := time.Parse(time.RFC3339, text)
	if err != nil {
		return errors.New("write date, time and zone, such as 2026-06-18T15:04:05Z or 2026-06-18T15:04:05-05:00")
	}
	m.Time = at
	return nil
}
