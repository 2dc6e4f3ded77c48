package record

import (
	"slices"
	"strings"
)

// GivenPaths lists the entries that Given knows: values of the job, the vessel
// and the sign-off, tests by their kind, and sections as a whole.
func GivenPaths() []string {
	var all []string
	for _, key := range jobTable().keys {
		all = append(all, "job."+key)
	}
	for _, key := range vesselTable().keys {
		all = append(all, "vessel."+key)
	}
	for _, key := range signOffTable().keys {
		all = append(all, "sign_off."+key)
	}
	kind := testTable().named("kind", -1)
	for _, word := range kind.words {
		all = append(all, "tests."+word)
	}
	return append(all, "spaces", "bundles", "penetrations", "tests")
}

// Given tells whether a record gives an entry of GivenPaths. What it calls
// unknown is not given.
func (r *Record) Given(path string) bool {
	head, key, below := strings.Cut(path, ".")
	switch head {
	case "job":
		return given(jobTable(), &r.Job, key)
	case "vessel":
		return given(vesselTable(), &r.Vessel, key)
	case "sign_off":
		return given(signOffTable(), &r.SignOff, key)
	case "spaces":
		return len(r.Spaces) > 0
	case "bundles":
		return len(r.Bundles) > 0
	case "penetrations":
		return len(r.Penetrations) > 0
	case "tests":
		return slices.ContainsFunc(r.Tests, func(t *Test) bool { return !below || t.Kind.Is() && t.Kind.V == key })
	}
	return false
}

func given[T any](t *table[T], of *T, key string) bool {
	f := t.named(key, -1)
	if f == nil {
		return false
	}
	value, ok := f.at(of).(interface{ Is() bool })
	return ok && value.Is()
}
