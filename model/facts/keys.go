package facts

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"time"

	"driploop/model/circuit"
	"driploop/model/record"
)

// entry is what an entry of a list is told from its like by: what it is, and
// all that it says, by which those that are the same thing are numbered.
type entry struct{ is, says string }

// keysOf returns a key for each entry of a list, which stays when the entries
// change places. Entries that say the same are the same: they are numbered as
// they stand.
func keysOf(entries []entry) []string {
	order := make([]int, len(entries))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return strings.Compare(entries[a].says, entries[b].says) })
	keys, count := make([]string, len(entries)), map[string]int{}
	for _, i := range order {
		is := entries[i].is
		count[is]++
		keys[i] = is
		if n := count[is]; n > 1 {
			keys[i] += " #" + strconv.Itoa(n)
		}
	}
	return keys
}

// segmentKeys names the segments of a conductor by the spaces that they run
// through. Of those in one space the order is what tells them apart: it is that
// of the boat.
func segmentKeys(c *record.Conductor) []string {
	all := make([]entry, len(c.Route))
	for i, g := range c.Route {
		all[i] = entry{is: c.ID + " in " + g.Space.V}
	}
	return keysOf(all)
}

func contactKeys(component string, contacts []*circuit.ContactResult) []string {
	all := make([]entry, len(contacts))
	for i, contact := range contacts {
		all[i] = entry{is: component}
		if link := contact.Link; link != nil {
			all[i] = entry{component + " " + strings.Join(link.Between, "-") + " " + link.When.V, says(link)}
		}
	}
	return keysOf(all)
}

func testKeys(tests []*record.Test) []string {
	all := make([]entry, len(tests))
	for i, t := range tests {
		of := strings.Join([]string{t.Load.V, t.Conductor.V, t.Penetration.V}, " ")
		all[i] = entry{t.Kind.V + " of " + of + " on " + day(t.On), says(t)}
	}
	return keysOf(all)
}

func waiverKeys(waivers []*record.Waiver) []string {
	all := make([]entry, len(waivers))
	for i, w := range waivers {
		all[i] = entry{w.Rule.V + " at " + w.Subject.V, says(w)}
	}
	return keysOf(all)
}

func day(d record.Date) string {
	if !d.Is() {
		return ""
	}
	return d.V.Format(time.DateOnly)
}

// says writes the values of an entry of the record one after the other, without
// their places.
func says(pointer any) string {
	var b strings.Builder
	v := reflect.ValueOf(pointer).Elem()
	for i := range v.NumField() {
		field := v.Field(i)
		if v.Type().Field(i).Anonymous {
			continue // its path and places
		}
		if field.Kind() == reflect.Struct {
			if value := field.FieldByName("V"); value.IsValid() {
				fmt.Fprintf(&b, "%v %v\n", field.FieldByName("State"), value)
				continue
			}
		}
		fmt.Fprintf(&b, "%v\n", field)
	}
	return b.String()
}
