package madeup

import (
	"fmt"
	"strings"
)

// gauge is a conductor with the crimps that suit it, as in the record that
// the parts come from.
type gauge struct{ size, strands, diameter, pull string }

// panel writes the components of one panel, and returns what writes its
// conductors, tests and waivers.
func (j *job) panel(number, branches int) (wires, tests, waivers []func()) {
	feed, back := fmt.Sprintf("feed-%d", number), fmt.Sprintf("returns-%d", number)
	posts := "{in: {stud: 5/16 in, material: stainless-316, cover: cap}"
	for i := range branches {
		posts += fmt.Sprintf(", s%d: {stud: \"#10\", material: stainless-316, cover: cap}", i+1)
	}
	posts += "}"
	j.part("  ", feed, "", of(bar).with("posts", posts))
	j.part("  ", back, "", of(bar).with("label", "Panel negative", "posts", posts))
	wires = append(wires, func() {
		j.wire(fmt.Sprintf("F%d", number), "heavy", of(wire).with("from", "isolator.out", "to", feed+".in", "length", "1.6 m", "first_support", "200 mm"), of(end),
			run("locker", "600 mm"), run("helm", "1 m"))
		j.wire(fmt.Sprintf("G%d", number), "heavy", of(wire).with("from", "house.neg", "to", back+".in", "role", "negative", "colour", "yellow", "length", "1.7 m", "first_support", "200 mm"), of(end),
			run("locker", "700 mm"), run("helm", "1 m"))
	})
	for i := range branches {
		w, t, v := j.branch(fmt.Sprintf("%d-%d", number, i+1), fmt.Sprintf("%s.s%d", feed, i+1), fmt.Sprintf("%s.s%d", back, i+1))
		wires, tests = append(wires, w), append(tests, t)
		if v != nil {
			waivers = append(waivers, v)
		}
	}
	return wires, tests, waivers
}

// main writes the conductors between battery and isolator.
func (j *job) main() {
	j.wire("B1", "heavy", of(wire), of(end).with("cover", "boot"), run("locker", "150 mm"))
	j.wire("B2", "heavy", of(wire).with("from", "main.load", "to", "isolator.in", "length", "300 mm"), of(end).with("cover", "boot"), run("locker", "300 mm"))
}

// run is a stretch of a route.
func run(space, length string) string {
	return strings.NewReplacer("space: locker", "space: "+space, "length: 150 mm", "length: "+length).Replace(stretch)
}

// branch writes the breaker and the load of one circuit.
func (j *job) branch(id, from, back string) (wires, tests, waiver func()) {
	breaker, load, amps := j.load(id)
	length := fmt.Sprintf("%d mm", 600+j.r.IntN(1800))
	thin := gauge{"14 AWG", "41", "0.35 in", "74 lbf"}
	fault := ""
	if j.r.Float64() < j.faulty {
		fault = faults[j.r.IntN(len(faults))].name
	}
	wires = func() {
		screw := of(end).with("hole", `"#10"`, "stud", `"#10"`, "torque", "24 lbf.in", "torque_range", "[20 lbf.in, 28 lbf.in]", "nut", "screw")
		j.wire("P"+id, "tail", of(wire).with("from", from, "to", breaker+".line", "size", "6 AWG", "strands", "266", "diameter", "0.32 in", "length", "120 mm", "bend_radius", "4 in", "first_support", "60 mm"),
			screw.with("barrel", "[6 AWG, 6 AWG]", "crimp", crimp("472 lbf")), strings.Replace(run("helm", "120 mm"), "support: 150 mm", "support: 120 mm", 1))
		thinWire := of(wire).with("size", thin.size, "strands", thin.strands, "diameter", thin.diameter, "length", length, "sheath", load, "sheath_tail", "75 mm", "twisted", "true",
			"bend_radius", "4 in", "first_support", "200 mm")
		thinEnd := screw.with("barrel", "["+thin.size+", "+thin.size+"]", "crimp", crimp(thin.pull))
		way := strings.Replace(run("helm", length), "in: open", "in: sheath", 1)
		positive := thinWire.with("from", breaker+".load", "to", load+".pos")
		ends := thinEnd
		for _, f := range faults {
			if f.name == fault {
				positive, ends = f.spoil(positive, thinEnd)
			}
		}
		j.fault = fault
		j.wire("Q"+id, "thin", positive, ends, way)
		j.wire("N"+id, "thin", thinWire.with("from", back, "to", load+".neg", "role", "negative", "colour", "yellow"), thinEnd, way)
	}
	tests = func() {
		for _, t := range []string{
			fmt.Sprintf("voltage-drop, current: %.2f A, at_source: 12.6 V, at_load: 12.5 V, tolerance: 0.1 V", 0.95*amps),
			"polarity, polarity: correct", "function",
		} {
			j.line("  - {kind: %s, load: %s, result: pass, on: 2026-02-27, by: bench-1}", t, load)
		}
	}
	if fault == "labelled at one end" {
		waiver = func() {
			j.line("  - {rule: documents/conductor-unlabelled, at: conductors.Q%s, reason: \"photographed, label ordered\", by: foreman, until: 2027-06-01}", id)
		}
	}
	return wires, tests, waiver
}

func crimp(pull string) string {
	return "{tool: ratchet, calibrated: true, matching: true, pull: " + pull + ", pull_time: 60 s}"
}

// load writes the breaker and the load of one circuit, which draws some current.
func (j *job) load(id string) (breaker, name string, amps float64) {
	amps = 0.5 * float64(1+j.r.IntN(3))
	breaker, name = "breaker-"+id, "load-"+id
	small := `{line: {stud: "#10", material: stainless-316, cover: cap}, load: {stud: "#10", material: stainless-316, cover: cap}}`
	j.part("  ", breaker, "breaker", of(device).with("ip", "IP65", "space", "helm", "label", "Circuit "+id, "rating", "10 A", "interrupt", "3 kA",
		"curve", "thermal", "duty", "branch", "resistance", "6 mohm", "posts", small))
	j.part("  ", name, "load", of(load).with("label", "Load "+id, "purpose", j.pick("instrument", "instrument", "radio", "ventilation"), "current", fmt.Sprintf("%.1f A", amps)))
	return breaker, name, amps
}

// wire writes a conductor.
func (j *job) wire(name, kind string, all, end entries, route ...string) {
	j.part("  ", name, kind, all)
	j.line("    route:")
	for _, r := range route {
		j.line("      - %s", r)
	}
	j.line("    ends:")
	j.part("      ", "from", "end-"+kind, end)
	j.part("      ", "to", "end-"+kind, end)
}

// faults are what is done wrong in a branch.
var faults = []struct {
	name  string
	spoil func(wire, end entries) (entries, entries)
}{
	{"labelled at one end", func(w, e entries) (entries, entries) { return w.with("labelled", "one"), e }},
	{"green", func(w, e entries) (entries, entries) { return w.with("colour", "green"), e }},
	{"no insulation to speak of", func(w, e entries) (entries, entries) { return w.with("insulation", "60 degC"), e }},
	{"solid copper", func(w, e entries) (entries, entries) { return w.with("strands", "1"), e }},
	{"hole of another stud", func(w, e entries) (entries, entries) { return w, e.with("hole", "3/8 in") }},
	{"not crimped", func(w, e entries) (entries, entries) {
		return w, e.with("crimp", "{tool: hammer, calibrated: false, matching: false, pull: 20 lbf, pull_time: 10 s}")
	}},
}
