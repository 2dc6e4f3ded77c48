package remedy

import (
	"slices"
	"strconv"
	"strings"

	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/verdict"
)

// workable lists the keys that work on a thing, or another one of its kind,
// changes. Others say what it is, where it stands, or what was measured.
func workable(key string) bool {
	return slices.Contains([]string{
		"interrupt", "voltage", "continuous", "intermittent", "holder", "ignition_protected", "trip_free", "reset", "ip", "interlocked", "guarded",
		"readily_accessible", "local_disconnect", "protector", "opens", "poles", "enclosure", "bonded", "marked",
		"terminals_covered", "ungrounded_covered", "vented_to", "tray", "fuel_shield", "units_match",
		"insulation", "oil_resistant", "tinned", "labelled", "first_support", "sheath_tail", "splice_from_end", "bend_radius", "twisted", "spacing",
		"in", "support", "support_kind", "protected", "loom_rating", "drains", "exhaust_dry", "exhaust_wet", "fuel_line", "fuel_line_side",
		"rigid_support", "with_ac", "moving_parts", "conduit_bore",
		"terminal", "soldered", "solder_length", "cover", "nut", "washer_in_path", "slack", "drip_loop", "plating", "tool", "calibrated", "matching",
		"side", "depth", "edge", "core_edge", "gap", "rating", "compound", "bedded", "countersunk", "core_sealed", "isolated", "backing", "squeeze_out",
	}, key)
}

// single are changes of one entry of the subject, of work that is then to be
// done: a cover, a support, another material. Words come in the order of the
// format, figures are those of the limit.
func (f *finder) single(breach *verdict.Verdict, entries []string) [][]Cure {
	var ladders [][]Cure
	for _, pattern := range entries {
		for _, path := range f.matching(pattern, breach.Subject) {
			field, ok := record.Describe(path, f.kindOf)
			if !ok || field.Part || !workable(field.Key) {
				continue
			}
			var ladder []Cure
			for _, value := range values(field, breach) {
				ladder = append(ladder, Cure{Changes: []record.Change{{Path: path, Value: value}}, Work: true})
			}
			ladders = append(ladders, ladder)
		}
	}
	return ladders
}

func (f *finder) kindOf(id string) string {
	if c := f.now.Record.Component(id); c != nil {
		return c.Kind.V
	}
	return ""
}

// matching lists the entries of the record that a pattern stands for, within
// the subject.
func (f *finder) matching(pattern, subject string) []string {
	want := strings.Split(pattern, ".")
	have := strings.Split(subject, ".")
	if len(have) >= len(want) {
		return nil
	}
	for i, step := range have {
		if want[i] == "*" || want[i] == step {
			want[i] = step
			continue
		}
		if base, ok := strings.CutSuffix(want[i], "[*]"); ok && strings.HasPrefix(step, base+"[") {
			want[i] = step
			continue
		}
		return nil
	}
	path := strings.Join(want, ".")
	if !strings.Contains(path, "*") {
		return []string{path}
	}
	before, after, ok := strings.Cut(path, "[*]")
	if !ok || strings.Contains(before+after, "*") {
		return nil
	}
	var all []string
	for i := 0; ; i++ {
		item := before + "[" + strconv.Itoa(i) + "]"
		if _, there := f.now.Record.Places[item]; !there {
			return all
		}
		all = append(all, item+after)
	}
}

// values are what an entry might say instead.
func values(field record.Field, breach *verdict.Verdict) []string {
	if len(field.Words) > 0 {
		return field.Words
	}
	switch field.Example {
	case "true":
		return []string{"true", "false"}
	case "":
		return nil
	}
	if _, err := strconv.Atoi(field.Example); err == nil {
		return nil // a count is not chosen
	}
	unit := field.Example[strings.LastIndexByte(field.Example, ' ')+1:]
	dim, measured := quantity.DimensionOf(unit)
	if !measured {
		return nil
	}
	var all []string
	for _, limit := range breach.Limit {
		if limit.Text == "" && limit.Quantity.Dim == dim {
			all = append(all, limit.Quantity.String())
		}
	}
	return all
}
