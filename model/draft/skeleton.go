package draft

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"driploop/model/quantity"
	"driploop/model/record"
)

// Spaces of a new record, where the answers do not name them.
const (
	batterySpace = "battery-space"
	loadSpace    = "load-space"
)

// skeleton is a record with its parts and no more.
type skeleton struct {
	root *item
	runs *item // all conductors
	// What others take their make from: the first cable and the first end of a
	// gauge, the first end on a component, the first stretch in a space.
	cables, ends, posts, spots map[string]*item
	// fed are the conductors that carry the main current, signal those that
	// control.
	fed, signal []*item
	device      *item // the fuse or breaker of the new circuit
	job         job
	trial       bool // entries get trial values where there are some
}

// newSkeleton lays out the parts of a job.
func newSkeleton(j job) *skeleton {
	s := &skeleton{job: j, cables: map[string]*item{}, ends: map[string]*item{}, posts: map[string]*item{}, spots: map[string]*item{}}
	s.root = part("",
		leaf("driploop", strconv.Itoa(record.Version)),
		part("job", leaf("number", spell(j.answers["number"])), leaf("title", record.Spell(j.label)), leaf("kind", j.answers["kind"])),
		part("vessel", leaf("name", record.Spell(j.answers["boat"])), leaf("hull", j.answers["hull"]),
			leaf("propulsion", j.answers["propulsion"]), leaf("system", j.answers["voltage"])),
		leaf("practice", "["+strings.Join(j.practice, ", ")+"]"),
		s.spaces(), s.components(), s.conductors(),
	)
	if j.holes > 0 {
		s.root.add(s.penetrations())
	}
	s.root.add(s.tests(), part("sign_off", leaf("by", unknown), leaf("on", unknown)))
	return s
}

const unknown = "unknown"

// spell writes a text that may be unknown.
func spell(text string) string {
	if text == unknown {
		return text
	}
	return record.Spell(text)
}

func (s *skeleton) spaces() *item {
	all := part("spaces", part(batterySpace, leaf("kind", s.job.answers["batteries"])))
	if s.far() {
		all.add(part(loadSpace, leaf("kind", s.job.answers["load"])))
	}
	return all
}

// far reports whether the new equipment stands in a space of its own.
func (s *skeleton) far() bool {
	return s.job.answers["load"] != s.job.answers["batteries"] || s.job.holes > 0
}

// place is the space of the new equipment.
func (s *skeleton) place() string {
	if s.far() {
		return loadSpace
	}
	return batterySpace
}

func (s *skeleton) component(id, kind, space, label string, more ...*item) *item {
	c := part(id, leaf("kind", kind), leaf("space", space), proposed("label", record.Spell(label), "as it will be marked"))
	return c.add(more...)
}

func (s *skeleton) components() *item {
	k := s.job
	device := s.component("circuit-"+k.device, k.device, batterySpace, k.label, leaf("rating", unknown), proposed("duty", k.duty, ""))
	if k.device == "breaker" {
		device.add(proposed("curve", "thermal", "a thermal breaker"))
	}
	s.device = device
	all := part("components",
		s.component("battery", "battery", batterySpace, "Battery", leaf("nominal", k.answers["voltage"])),
		device,
		s.component("neg-bus", "busbar", batterySpace, "Common negative"),
	)
	load := s.component(k.id, k.component, s.place(), k.label)
	switch {
	case k.source:
		load.add(leaf("output", k.answers["current"]), leaf("nominal", k.answers["voltage"]))
	default:
		all.add(s.component("isolator", "switch", batterySpace, "Battery switch", proposed("duty", "battery-disconnect", "")))
		load.add(leaf("current", k.answers["current"]), leaf("nominal", k.answers["voltage"]),
			proposed("purpose", k.purpose, ""), proposed("drop_class", k.class, ""))
	}
	if k.control {
		load.add(proposed("reversible", "true", ""))
		all.add(s.control()...)
	}
	return all.add(load)
}

// control is the reversing box of a motor with its fuse and switch.
func (s *skeleton) control() []*item {
	link := func(a, b, when string) *item {
		return &item{flow: true, children: []*item{leaf("between", "["+a+", "+b+"]"), leaf("rating", unknown), leaf("when", when)}}
	}
	coil := func(a, when string) *item {
		return &item{flow: true, children: []*item{leaf("between", "["+a+", return]"), {key: "current", value: "1 A", assumed: true}, leaf("when", when)}}
	}
	label := s.job.label + " control"
	links := part("links", link("supply", "a", "one-way"), link("b", "return", "one-way"), link("supply", "b", "other-way"), link("a", "return", "other-way"))
	coils := part("coils", coil("one", "one-way"), coil("other", "other-way"))
	pushes := part("links",
		&item{flow: true, children: []*item{leaf("between", "[supply, one]"), leaf("rating", unknown), leaf("when", "one-way")}},
		&item{flow: true, children: []*item{leaf("between", "[supply, other]"), leaf("rating", unknown), leaf("when", "other-way")}})
	links.list, coils.list, pushes.list = true, true, true
	return []*item{
		s.component("control-fuse", "fuse", s.place(), label, leaf("rating", unknown), proposed("duty", "branch", "")),
		s.component("control-switch", "switch", s.place(), label, proposed("duty", "motor-control", ""), pushes),
		s.component("reversing-box", "relay", s.place(), label, proposed("duty", "motor", ""), links, coils),
	}
}

// conductor adds one from terminal to terminal.
func (s *skeleton) conductor(id, from, to, role, colour, length, why string, spaces ...string) *item {
	c := part(id, leaf("from", from), leaf("to", to), leaf("role", role), proposed("size", unknown, ""), proposed("colour", colour, ""), proposed("length", length, why))
	route := part("route")
	route.list = true
	for _, space := range spaces {
		seg := &item{common: sharedInSpace}
		if !s.mergeFirst(seg, s.spots, space, "in-"+space) {
			seg.add(leaf("space", space))
		}
		if len(spaces) == 1 {
			seg.add(leaf("length", length))
		} else {
			seg.add(&item{key: "length", value: s.share(len(spaces)), assumed: true})
		}
		route.add(seg)
	}
	gauge := power
	if role == control {
		gauge = control
	}
	c.add(route, part("ends", s.endOf("from", from, gauge), s.endOf("to", to, gauge)))
	c.common, c.gauge = sharedByCables, gauge
	if !s.mergeFirst(c, s.cables, gauge, gauge+"-cable") && !s.mergeFirst(c, s.cables, power, power+"-cable") {
		c.add(proposed("insulation", "105 degC", "boat cable"))
	}
	s.runs.add(c)
	return c
}

// Gauges of a draft: of the main current, and of its control.
const power, control = "power", "control"

// endOf is one end of a conductor on a terminal such as battery.pos.
func (s *skeleton) endOf(side, terminal, gauge string) *item {
	component, _, _ := strings.Cut(terminal, ".")
	end := part(side)
	end.common, end.gauge, end.post = sharedByEnds, gauge, component+" "+gauge
	name := "at-" + component
	if gauge == control && !strings.HasPrefix(component, control) {
		name += "-" + control
	}
	if !s.mergeFirst(end, s.posts, end.post, name) && !s.mergeFirst(end, s.ends, gauge, gauge+"-end") && !s.mergeFirst(end, s.ends, power, power+"-end") {
		end.add(proposed("terminal", "ring", ""))
	}
	return end
}

// mergeFirst lets an item merge the first of its group, if there was one, and
// else makes it the first.
func (s *skeleton) mergeFirst(i *item, groups map[string]*item, group, anchor string) bool {
	first := groups[group]
	if first == nil {
		groups[group] = i
		return false
	}
	if first == i {
		return false
	}
	if first.anchor == "" {
		first.anchor = anchor
	}
	i.merges = first
	return true
}

func (s *skeleton) conductors() *item {
	s.runs = part("conductors")
	k := s.job
	way := []string{batterySpace}
	if s.far() {
		way = append(way, loadSpace)
	}
	home := slices.Clone(way)
	slices.Reverse(home)
	device, load := s.device.key, k.id
	run := k.answers["length"]
	if k.source {
		s.fed = append(s.fed,
			s.conductor("P1", "battery.pos", device+".line", "positive", "red", s.short(6), "the device stands near the battery", batterySpace),
			s.conductor("P2", device+".load", load+".pos", "positive", "red", run, "as answered", way...),
			s.conductor("N1", load+".neg", "neg-bus.a", "negative", "yellow", run, "as answered", home...),
			s.conductor("N2", "neg-bus.b", "battery.neg", "negative", "yellow", s.short(24), "", batterySpace),
		)
		return s.runs
	}
	to, back := load+".pos", load+".neg"
	if k.control {
		to, back = "reversing-box.supply", "reversing-box.return"
	}
	s.fed = append(s.fed,
		s.conductor("P1", "battery.pos", device+".line", "positive", "red", s.short(6), "the device stands near the battery", batterySpace),
		s.conductor("P2", device+".load", "isolator.in", "positive", "red", s.short(18), "", batterySpace),
		s.conductor("P3", "isolator.out", to, "positive", "red", run, "as answered", way...),
	)
	if k.control {
		s.fed = append(s.fed,
			s.conductor("P4", "reversing-box.a", load+".pos", "positive", "red", s.short(24), "", s.place()),
			s.conductor("N3", "reversing-box.b", load+".neg", "negative", "yellow", s.short(24), "", s.place()),
		)
		s.signal = append(s.signal,
			s.conductor("C1", "reversing-box.supply", "control-fuse.line", control, "orange", s.short(6), "", s.place()),
			s.conductor("C2", "control-fuse.load", "control-switch.supply", control, "orange", s.short(36), "", s.place()),
			s.conductor("C3", "control-switch.one", "reversing-box.one", control, "orange", s.short(36), "", s.place()),
			s.conductor("C4", "control-switch.other", "reversing-box.other", control, "orange", s.short(36), "", s.place()),
		)
	}
	s.fed = append(s.fed,
		s.conductor("N1", back, "neg-bus.a", "negative", "yellow", run, "as answered", home...),
		s.conductor("N2", "neg-bus.b", "battery.neg", "negative", "yellow", s.short(24), "", batterySpace),
	)
	return s.runs
}

// share is the part of the run in one of so many spaces.
func (s *skeleton) share(spaces int) string {
	unit := "ft"
	if s.job.metric {
		unit = "m"
	}
	return quantity.New(s.job.length.In(unit)/float64(spaces), unit).String()
}

// short is a short length of so many inches, in round figures of the boat's
// units.
func (s *skeleton) short(inches int) string {
	if s.job.metric {
		const mmPerInch = 25 // round
		return fmt.Sprintf("%d mm", inches*mmPerInch)
	}
	return quantity.New(float64(inches), "in").String()
}

func (s *skeleton) penetrations() *item {
	var passing []string
	for _, c := range s.fed {
		if route := c.own("route"); len(route.children) > 1 {
			passing = append(passing, c.key)
		}
	}
	all := part("penetrations")
	for i := range s.job.holes {
		all.add(part(fmt.Sprintf("hole-%d", i+1), leaf("from", batterySpace), leaf("to", loadSpace), leaf("passes", "["+strings.Join(passing, ", ")+"]")))
	}
	return all
}

func (s *skeleton) tests() *item {
	all := part("tests")
	all.list = true
	if s.job.source {
		all.add(&item{children: []*item{leaf("kind", "polarity"), leaf("result", unknown)}})
		return all
	}
	for _, kind := range []string{"voltage-drop", "polarity", "function"} {
		all.add(&item{children: []*item{leaf("kind", kind), leaf("load", s.job.id), leaf("result", unknown)}})
	}
	for i := range s.job.holes {
		all.add(&item{children: []*item{leaf("kind", "hose"), leaf("penetration", fmt.Sprintf("hole-%d", i+1)), leaf("result", unknown)}})
	}
	return all
}
