package circuit

import (
	"fmt"
	"reflect"
	"slices"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"driploop/model/figure"
)

// told is all that an analysis tells when it is asked for everything: each figure
// with its working, by its place, and the cases.
func told(a *Analysis) []string {
	var list []string
	var visit func(place string, v reflect.Value)
	visit = func(place string, v reflect.Value) {
		if !v.CanInterface() {
			return // of the record, behind a link
		}
		if f, ok := v.Interface().(figure.Figure); ok {
			list = append(list, fmt.Sprintf("%s: %v %s %v %v %v", place, f.Value, f.Unit, f.Known, f.Gaps, f.Working()))
			return
		}
		switch v.Kind() {
		case reflect.Pointer:
			if !v.IsNil() {
				visit(place, v.Elem())
			}
		case reflect.Struct:
			for i := range v.NumField() {
				visit(place+"."+v.Type().Field(i).Name, v.Field(i))
			}
		case reflect.Map:
			for _, key := range v.MapKeys() {
				visit(place+"."+key.String(), v.MapIndex(key))
			}
		case reflect.Slice:
			for i := range v.Len() {
				visit(fmt.Sprintf("%s[%d]", place, i), v.Index(i))
			}
		}
	}
	for _, part := range []any{a.Conductors, a.Devices, a.Loads, a.Batteries, a.Components} {
		visit("", reflect.ValueOf(part))
	}
	slices.Sort(list)
	for _, c := range a.Cases.All() {
		list = append(list, fmt.Sprint(c.Name, c.Kind, c.Load, c.Voltages, c.Currents, c.Sources, c.Temperatures, c.Problem, c.Gaps))
	}
	return list
}

// TestAnAnalysisTellsTheSameWheneverItIsAsked asks for working and cases at once,
// and after another record was analysed, from several goroutines at a time: no
// answer may hang on when or how often somebody asks, nor on other records.
func TestAnAnalysisTellsTheSameWheneverItIsAsked(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, first := drawYard(t, 1, 8)
		_, second := drawYard(t, 1, 8)
		want, other := told(Analyse(read(t, first))), told(Analyse(read(t, second)))

		a, b := Analyse(read(t, first)), Analyse(read(t, second))
		var asking sync.WaitGroup
		answers := make([][]string, 3)
		for k := range answers {
			asking.Go(func() { answers[k] = told([]*Analysis{a, b}[k%2]) })
		}
		asking.Wait()
		for k, got := range answers {
			require.Equal(t, [][]string{want, other}[k%2], got, "%s\n%s", first, second)
		}
	})
}
