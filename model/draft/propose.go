package draft

import (
	"fmt"
	"slices"
	"strings"

	"driploop/model/copper"
	"driploop/model/curve"
	"driploop/model/quantity"
	"driploop/model/verdict"
)

// sizes are the usual sizes in the boat's system, smallest first, from the least
// that is used on boats.
func (s *skeleton) sizes() []string {
	system, least := quantity.MM2, quantity.WireSize{System: quantity.MM2, MM2: 1}
	if s.gauges() {
		system, least = quantity.AWG, quantity.WireSize{System: quantity.AWG, Gauge: 16}
	}
	all := copper.UsualSizes(system)
	all = all[slices.Index(all, least):]
	texts := make([]string, len(all))
	for i, size := range all {
		texts[i] = size.String()
	}
	return texts
}

// trialValue is what an entry is taken to be while sizes are sought: what is
// usual for it (common practice, no source). It never stays in the record.
func (s *skeleton) trialValue(holder *item, key string) string {
	switch key {
	case "earthing":
		return "negative-ground"
	case "ambient":
		if holder.own("kind").value == "engine" {
			return "50 degC" // 33 CFR part 183, Table 5, note 1: engine spaces
		}
		return "30 degC" // the ambient of that table
	case "material":
		return "copper"
	case "class":
		if s.gauges() {
			return "type-3"
		}
		return "class-5"
	case "sheath":
		return "none"
	case "in":
		return "open"
	}
	return ""
}

// gauges reports whether conductors are sized by gauge: where the boat is
// measured in feet, or by a practice whose table knows gauges only.
func (s *skeleton) gauges() bool {
	return !s.job.metric || slices.Contains(s.job.practice, "us-federal")
}

// Sizing lists the rules that have to be met, not only unbroken, for a size to be
// proposed.
func Sizing() []string {
	return []string{"conductors/overloaded", "conductors/drop-excessive", "protection/device-oversized"}
}

// propose sets the rating of the device to the least usual one that carries
// the current, and the conductors to the least size that breaks no rule.
func (s *skeleton) propose(judge Judge) error {
	amps := s.job.current.In("A")
	s.set(s.device, "rating", unknown, "")
	for _, r := range curve.UsualRatings() {
		if r >= amps {
			s.set(s.device, "rating", fmt.Sprintf("%g A", r), "the least usual rating that carries the current")
			break
		}
	}
	s.trial = true
	defer s.forget()
	// Control conductors are thin: some size for the others to be judged by.
	for _, c := range s.signal {
		s.set(c, "size", s.sizes()[0], "")
	}
	if fuse := s.root.own("components").own("control-fuse"); fuse != nil {
		const coils = "5 A" // ample for two relay coils: common practice, no source
		s.set(fuse, "rating", coils, "ample for two relay coils")
	}
	for _, group := range [][]*item{s.fed, s.signal} {
		if err := s.least(judge, group); err != nil {
			return err
		}
	}
	return nil
}

// least tries the sizes on conductors, smallest first, and leaves them unknown
// if none will do.
func (s *skeleton) least(judge Judge, conductors []*item) error {
	if len(conductors) == 0 {
		return nil
	}
	for _, size := range s.sizes() {
		for _, c := range conductors {
			s.set(c, "size", size, "the least size that keeps the rules, run in the open at 30 °C, 50 °C in an engine space")
		}
		if err := s.fill(judge); err != nil {
			return err
		}
		judged, err := judge(s.text())
		if err != nil {
			return err
		}

		if suits(judged, conductors) {
			return nil
		}
	}
	for _, c := range conductors {
		s.set(c, "size", unknown, "")
		c.own("size").comment = "no usual size keeps the rules as the answers stand; see driploop check and driploop figures"
	}
	return nil
}

// suits reports whether a size keeps all rules on the conductors and on what
// they feed.
func suits(judged *verdict.Record, conductors []*item) bool {
	mine := func(subject string) bool {
		return strings.HasPrefix(subject, "components.") || slices.ContainsFunc(conductors, func(c *item) bool {
			return subject == "conductors."+c.key || strings.HasPrefix(subject, "conductors."+c.key+".")
		})
	}
	for i := range judged.Verdicts {
		v := &judged.Verdicts[i]
		open := v.Outcome == verdict.Undecided && slices.Contains(Sizing(), v.Rule.ID)
		if mine(v.Subject) && (v.Outcome == verdict.Breach || open) {
			return false
		}
	}
	return true
}

// forget takes the trial values out again.
func (s *skeleton) forget() {
	s.trial = false
	var walk func(*item)
	walk = func(i *item) {
		if i.assumed {
			i.value, i.assumed = unknown, false
		}
		for _, c := range i.children {
			walk(c)
		}
	}
	walk(s.root)
}

func (s *skeleton) set(holder *item, key, value, why string) {
	p := proposed(key, value, why)
	if value == unknown {
		p.comment = ""
	}
	if old := holder.own(key); old != nil {
		*old = *p
		return
	}
	holder.add(p)
}
