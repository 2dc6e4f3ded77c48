package rules

import (
	"math"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestSpotsReadWhatReflectionReads compares for every fact that there is.
func TestSpotsReadWhatReflectionReads(t *testing.T) {
	engine := soundEngine(t)
	read := map[reflect.Kind]int{}
	for _, kind := range engine.kinds {
		maker := newMaker(&rule{of: kind, mod: engine.rules[0].mod})
		maker.numbers = append(maker.numbers, math.Inf(1), math.NaN(), exactInt, exactInt+2, -1)
		for range 10 {
			doc := maker.document(engine)
			maker.takeAway(engine, doc)
			subjects := engine.list(doc).subjects[kind.number]
			require.NotEmpty(t, subjects)
			for i := range subjects {
				s := &subjects[i]
				assert.Same(t, s.value().Addr().Interface().(based).Base(), s.base, kind.name)
				for _, f := range kind.order {
					v := s.value().FieldByIndex(f.index)
					require.Equal(t, f.optional, v.Kind() == reflect.Pointer, "%s.%s: what may be absent is a pointer", kind.name, f.name)
					got, want := f.spot.read(s.memory), byReflection(v)
					assert.Equal(t, want.state != absent, f.spot.known(s.memory), "%s.%s", kind.name, f.name)
					if math.IsNaN(want.number) && math.IsNaN(got.number) {
						got.number, want.number = 0, 0
					}
					assert.Equal(t, want, got, "%s.%s", kind.name, f.name)
					if f.words {
						assert.Equal(t, v.Interface(), f.spot.list(s.memory), "%s.%s", kind.name, f.name)
					}
					read[f.kind]++
				}
			}
		}
	}
	assert.Len(t, read, 5, "texts, numbers, whole numbers, truths and lists: %v", read)
}

// byReflection is what a spot should read.
func byReflection(v reflect.Value) cell {
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return cell{}
		}
		v = v.Elem()
	}
	c := cell{state: exact}
	switch v.Kind() {
	case reflect.String:
		c.text = v.String()
	case reflect.Float64:
		if c.number = v.Float(); math.IsNaN(c.number) || math.IsInf(c.number, 0) {
			c.state = inexact
		}
	case reflect.Int:
		if c.number = float64(v.Int()); math.Abs(c.number) > exactInt || v.Int() == exactInt+1 {
			c.state = inexact
		}
	case reflect.Bool:
		if v.Bool() {
			c.number = 1
		}
	}
	return c
}
