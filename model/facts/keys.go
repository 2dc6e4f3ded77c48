package facts

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"driploop/model/circuit"
	"driploop/model/record"
)

// entry is what an entry of a list is told from its like by: what it is, and the
// entry itself, by all that it says those that are the same thing are numbered.
type entry struct {
	is   string
	from any // pointer to it; nil where the order in the list is that of the boat
}

// keysOf returns a key for each entry of a list, which stays when the entries
// change places. Entries that say the same are the same: they are numbered as
// they stand.
func keysOf(entries []entry) []string {
	keys, first := make([]string, len(entries)), make(map[string]int, len(entries))
	var alike map[string][]int // those that are not told apart by what they are
	for i, e := range entries {
		keys[i] = e.is
		before, known := first[e.is]
		switch {
		case !known:
			first[e.is] = i
			continue
		case alike == nil:
			alike = map[string][]int{}
		}
		if alike[e.is] == nil {
			alike[e.is] = []int{before}
		}
		alike[e.is] = append(alike[e.is], i)
	}
	for is, several := range alike {
		for n, i := range inOrder(entries, several) {
			keys[i] = is
			if n > 0 {
				keys[i] += " #" + strconv.Itoa(n+1)
			}
		}
	}
	return keys
}

// inOrder puts some entries into the order of what they say.
func inOrder(entries []entry, some []int) []int {
	said := make(map[int]string, len(some))
	for _, i := range some {
		if entries[i].from != nil {
			said[i] = says(entries[i].from)
		}
	}
	slices.SortStableFunc(some, func(a, b int) int { return strings.Compare(said[a], said[b]) })
	return some
}

// segmentKeys names the segments of a conductor by the spaces that they run
// through. Of those in one space the order is what tells them apart: it is that
// of the boat.
func segmentKeys(c *record.Conductor) []string {
	if len(c.Route) == 1 {
		return []string{c.ID + " in " + c.Route[0].Space.V}
	}
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
			all[i] = entry{component + " " + strings.Join(link.Between, "-") + " " + link.When.V, link}
		}
	}
	return keysOf(all)
}

func (st *store) testKeys(tests []*record.Test) []string {
	all := make([]entry, len(tests))
	for i, t := range tests {
		day := ""
		if t.On.Is() {
			day = *st.date(t.On.V)
		}
		all[i] = entry{t.Kind.V + " of " + t.Load.V + " " + t.Conductor.V + " " + t.Penetration.V + " on " + day, t}
	}
	return keysOf(all)
}

func waiverKeys(waivers []*record.Waiver) []string {
	all := make([]entry, len(waivers))
	for i, w := range waivers {
		all[i] = entry{w.Rule.V + " at " + w.Subject.V, w}
	}
	return keysOf(all)
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
