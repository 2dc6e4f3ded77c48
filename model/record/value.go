package record

import (
	"time"

	"driploop/model/quantity"
	"driploop/model/record/internal/tree"
	"driploop/model/verdict"
)

// State tells whether a value was given.
type State uint8

// The states of a value. Absent and Unknown mean the same to a rule, and
// different things to a person: "not written" and "we do not know".
const (
	Absent State = iota
	Unknown
	Given
)

// Value is one value of a record with the place where it stands.
type Value[T any] struct {
	V     T
	State State
	at    tree.Extent // zero if absent: a record has thousands of values, so in little room
}

// At returns where the value stands; the zero range if it is absent.
func (v Value[T]) At() verdict.Range { return v.at.Range() }

// Get returns the value and whether it was given.
func (v Value[T]) Get() (T, bool) { return v.V, v.State == Given }

// Is reports whether the value was given.
func (v Value[T]) Is() bool { return v.State == Given }

// Or returns the value if given, else the fallback.
func (v Value[T]) Or(fallback T) T {
	if v.State == Given {
		return v.V
	}
	return fallback
}

// The kinds of value in a record.
type (
	// Text is a text; most are one of a list of words.
	Text = Value[string]
	// Flag is true or false.
	Flag = Value[bool]
	// Count is a whole number from 0 up.
	Count = Value[int]
	// Measure is a number with its unit.
	Measure = Value[quantity.Quantity]
	// Wire is the size of a conductor.
	Wire = Value[quantity.WireSize]
	// Date is a day, at midnight UTC.
	Date = Value[time.Time]
	// Words is a list of texts. If one of them is unknown, so is the list, and V
	// holds the others.
	Words = Value[[]string]
	// Span is a least and a greatest value, in that order.
	Span = Value[[2]quantity.Quantity]
)

// Entry is what every named or listed part of a record has: its path from the
// root, such as "conductors.P1", and its places.
type Entry struct {
	ID   string        // map key; empty in lists
	Path string        // from the root of the record
	At   verdict.Range // the key, or the list item
	Body verdict.Range // the value
}
