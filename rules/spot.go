package rules

import (
	"math"
	"reflect"
	"unsafe"

	"driploop/model/facts"
)

// spot is where a fact lies in the memory of a subject's struct. Facts are read
// millions of times in a run; by reflection that is most of what judging costs.
// Everything unsafe of this package stands in this file, and spot_test.go holds it to
// reflection for every fact there is.
type spot struct {
	offset   uintptr
	kind     reflect.Kind // of the fact itself, without its pointer
	optional bool         // a pointer, nil where the fact is absent
}

// memory is where the struct of a subject begins.
type memory struct{ start unsafe.Pointer }

// memoryOf returns where the struct begins that a value points to.
func memoryOf(pointer reflect.Value) memory { return memory{pointer.UnsafePointer()} }

// pointer returns a pointer to the struct, which is of that type.
func (m memory) pointer(of reflect.Type) reflect.Value { return reflect.NewAt(of, m.start) }

// spotOf returns where the field of an index, as reflect has it, lies in a type.
func spotOf(of reflect.Type, index []int) spot {
	s := spot{}
	for _, i := range index {
		field := of.Field(i)
		s.offset += field.Offset
		of = field.Type
	}
	if s.kind = of.Kind(); s.kind == reflect.Pointer {
		s.optional, s.kind = true, of.Elem().Kind()
	}
	return s
}

// known tells whether the fact is there.
func (s *spot) known(of memory) bool {
	return !s.optional || *(*unsafe.Pointer)(unsafe.Add(of.start, s.offset)) != nil
}

// read reads the fact of a subject.
func (s *spot) read(of memory) (c cell) {
	at := unsafe.Add(of.start, s.offset)
	if s.optional {
		if at = *(*unsafe.Pointer)(at); at == nil {
			return c
		}
	}
	c.state = exact
	switch s.kind {
	case reflect.String:
		c.text = *(*string)(at)
	case reflect.Float64:
		if c.number = *(*float64)(at); math.IsNaN(c.number) || math.IsInf(c.number, 0) {
			c.state = inexact
		}
	case reflect.Int:
		i := *(*int)(at)
		if c.number = float64(i); i < -exactInt || i > exactInt {
			c.state = inexact
		}
	case reflect.Bool:
		if *(*bool)(at) {
			c.number = 1
		}
	}
	return c
}

// subject returns the part of the struct that every subject has.
func (s *spot) subject(of memory) *facts.Subject {
	return (*facts.Subject)(unsafe.Add(of.start, s.offset))
}

// list reads a fact that is a list of words.
func (s *spot) list(of memory) []string { return *(*[]string)(unsafe.Add(of.start, s.offset)) }
