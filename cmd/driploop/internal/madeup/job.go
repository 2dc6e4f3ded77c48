package madeup

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
)

// job is one record while it is written.
type job struct {
	*strings.Builder
	r       *rand.Rand
	shared  bool               // what parts have in common is written once
	anchors map[string]entries // written so far
	faulty  float64            // chance of a fault in a part
	gaps    float64            // chance that an entry of a part was not looked at
	fault   string
}

// Job makes the record of one job up. The same source of random numbers gives the
// same bytes.
func Job(r *rand.Rand, number int) []byte {
	j := &job{Builder: &strings.Builder{}, r: r, shared: r.IntN(5) > 0, anchors: map[string]entries{}}
	// Three conductors a branch and four to six of a panel: log-normal around 12
	// branches.
	branches := min(max(int(math.Round(12*math.Exp(0.6*r.NormFloat64()))), 1), 200)
	switch p := r.Float64(); {
	case p < 0.65: // whole and in order
	case p < 0.85:
		j.faulty = 0.1
	case p < 0.95:
		j.faulty, j.gaps = 0.1, 0.004
	default: // little known, and so little written down
		j.gaps, branches = 0.35, (branches+3)/4
	}
	j.head(number, branches)
	var wires, tests, waivers []func()
	j.line("components:")
	j.part("  ", "house", "", of(battery))
	j.part("  ", "main", "breaker", of(device))
	j.part("  ", "isolator", "", of(isolator))
	for at := 0; at < branches; at += perPanel {
		w, t, v := j.panel(at/perPanel+1, min(perPanel, branches-at))
		wires, tests, waivers = append(wires, w...), append(tests, t...), append(waivers, v...)
	}
	j.line("\nconductors:")
	j.main()
	write(wires)
	j.line("\ntests:")
	write(tests)
	if len(waivers) > 0 && r.IntN(4) == 0 {
		j.line("\nwaivers:")
		write(waivers)
	}
	j.line("\nsign_off: {by: bench-1, licence: on-file, on: 2026-02-27}")
	return []byte(j.String())
}

// perPanel is how many branches a panel has at most.
const perPanel = 16

func write(all []func()) {
	for _, part := range all {
		part()
	}
}

func (j *job) line(format string, with ...any) { fmt.Fprintf(j, format+"\n", with...) }

func (j *job) pick(words ...string) string { return words[j.r.IntN(len(words))] }

func (j *job) head(number, branches int) {
	propulsion := j.pick("diesel-inboard", "diesel-inboard", "petrol-inboard", "petrol-outboard")
	j.line("driploop: 1\n\njob:\n  number: G-%06d\n  title: Made-up job of %d circuits\n  kind: rewire\n  yard: Knuckle Point Marine", number, branches)
	j.line("  started: 2026-02-16\n  completed: 2026-02-27\n\nvessel:\n  name: Boat %d\n  length: %.1f m\n  hull: frp\n  propulsion: %s", number, 6+5*j.r.Float64(), propulsion)
	j.line("  engines: 1\n  auxiliary: none\n  system: 12 V\n  earthing: negative-ground\n  earth_links: 1\n  detector: false\n  ac: false\n  service: recreational\n  built: 1987-01-01")
	j.line("\npractice: [%s]\n\nspaces:", j.pick("us-federal, us-voluntary, workmanship", "us-voluntary, workmanship", "us-federal, us-voluntary, international, workmanship"))
	j.part("  ", "locker", "space", of(space))
	j.part("  ", "helm", "space", of(space).with("kind", "helm", "exposure", "damp", "open_to_air", "true"))
	j.line("")
}

// part writes one part: in a record that shares, what it has in common with the
// first of its kind by reference.
func (j *job) part(indent, name, kind string, all entries) {
	if j.gaps > 0 {
		all = j.forget(all)
	}
	base := j.anchors[kind]
	switch {
	case j.shared && base != nil:
		j.line("%s%s:%s", indent, name, j.remark())
		j.line("%s  <<: *%s", indent, kind)
		all = all.beyond(base)
	case j.shared && kind != "":
		j.anchors[kind] = all
		j.line("%s%s: &%s%s", indent, name, kind, j.remark())
	default:
		j.line("%s%s:%s", indent, name, j.remark())
	}
	for _, p := range all {
		j.line("%s  %s: %s", indent, p.key, p.value)
	}
}

// remark says of a faulty part what is wrong with it.
func (j *job) remark() string {
	said := j.fault
	j.fault = ""
	if said == "" {
		return ""
	}
	return "  # " + said
}

// beyond returns what a part has beyond another.
func (e entries) beyond(base entries) (rest entries) {
	has := map[pair]bool{}
	for _, p := range base {
		has[p] = true
	}
	for _, p := range e {
		if !has[p] {
			rest = append(rest, p)
		}
	}
	return rest
}

// forget writes some entries as unknown: all but what a part is and what it joins.
func (j *job) forget(all entries) entries {
	out := append(entries{}, all...)
	for i, p := range out {
		switch p.key {
		case "kind", "from", "to", "role", "space", "exposure", "posts", "label":
		default:
			if j.r.Float64() < j.gaps {
				out[i].value = "unknown"
			}
		}
	}
	return out
}
