package main

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/verdict"
)

// The windlass job passes as it stands; each single change makes it fail by the
// rules named, and by nothing else. Common practice, no source, for the job;
// each rule cites its own.
func TestWindlassFailsBySingleChanges(t *testing.T) {
	engine := shippedRules(t)
	text := demo(t, "clean/windlass.yaml")
	for _, c := range []struct {
		name  string
		edits []string // pairs: what stands in the record, what is put there
		rules []string
	}{
		{"55 ft out and back", []string{
			"length: 21.5 ft", "length: 24 ft", "{<<: *lazarette, length: 4 ft,", "{<<: *lazarette, length: 6.5 ft,",
			"length: 23 ft", "length: 25.5 ft", "{<<: *lazarette, length: 5.5 ft,", "{<<: *lazarette, length: 8 ft,",
		}, []string{"conductors/drop-excessive"}},
		{"10 AWG", []string{"    size: 8 AWG", "    size: 10 AWG"}, []string{"conductors/drop-excessive", "conductors/overheats", "protection/stall-not-cleared", "terminations/barrel-not-gauge"}},
		{"a breaker of 150 A", []string{"rating: 35 A", "rating: 150 A"}, []string{"protection/device-oversized"}},
		{"a breaker that resets itself", []string{"reset: manual", "reset: automatic"}, []string{"protection/resets-itself"}},
		{"a breaker that cannot interrupt", []string{"interrupt: 3 kA", "interrupt: 1 kA"}, []string{"protection/interrupt-too-weak"}},
		{"a breaker for 6 V", []string{"voltage: 48 V\n    interrupt", "voltage: 6 V\n    interrupt"}, []string{"protection/device-voltage-low"}},
		{"led past the breaker", []string{"from: windlass-breaker.load", "from: battery-switch.out", "ends: {from: *eight-14, to: &eight-bow", "ends: {from: *eight-38, to: &eight-bow"}, []string{"protection/device-too-far", "protection/interrupt-too-weak", "protection/unprotected"}},
		{"switch and breaker 5 ft from the battery", []string{
			"length: 24 in\n    sheath", "length: 60 in\n    sheath", "length: 24 in\n        in: conduit", "length: 60 in\n        in: conduit",
		}, []string{"protection/device-too-far"}},
		{"no conduit to the breaker", []string{"in: conduit", "in: open"}, []string{"protection/device-too-far"}},
		{
			"fed past the battery switch, whose own feed now ends there",
			[]string{"from: battery-switch.out", "from: engine-battery.pos"},
			[]string{"protection/unprotected", "sources/bypass-unjustified"},
		},
		{"blue negative", []string{"colour: yellow, length: 30 in", "colour: blue, length: 30 in"}, []string{"conductors/wrong-colour"}},
		{"negative not on the common post", []string{"to: neg-post.a,", "to: bond-post.b,", "label: Bonding, stud: 1/4 in,", "label: Bonding, stud: 3/8 in,"}, []string{"grounding/negatives-apart"}},
		{"thin control wires", []string{"size: 14 AWG", "size: 18 AWG"}, []string{"conductors/too-small", "terminations/barrel-not-gauge"}},
		{"battery comes loose", []string{"movement: 0.2 in", "movement: 1.2 in"}, []string{"sources/battery-moves"}},
		{
			"supports 30 in apart",
			[]string{"length: 14 ft, in: open, bundle: pair, support: 16 in", "length: 14 ft, in: open, bundle: pair, support: 30 in"},
			[]string{"routing/support-too-far"},
		},
		{"no drip loop at the box", []string{"falls: true, drip_loop: true", "falls: true, drip_loop: false"}, []string{"routing/no-drip-loop"}},
		{"rings too large", []string{"hole: 1/4 in", "hole: 5/16 in"}, []string{"terminations/hole-not-stud"}},
		{"weak crimps", []string{"pull: 300 lbf", "pull: 30 lbf"}, []string{"terminations/pull-too-low"}},
		{"box open to spray, joints bare", []string{
			"ip: IP66\n    ignition_protected: true\n    metal_case: false\n    bonded: false\n    marked: true\n    enclosure: watertight\n    entry: below\n    stud: 1/4 in",
			"ip: IP20\n    ignition_protected: true\n    metal_case: false\n    bonded: false\n    marked: true\n    enclosure: watertight\n    entry: below\n    stud: 1/4 in",
			"drip_loop: true, cover: heat-shrink-adhesive", "drip_loop: true, cover: none",
		}, []string{"equipment/ingress-rating-low", "terminations/unsealed-where-wet"}},
		{"deck switch without bedding", []string{"compound: polysulphide\n", "compound: none\n"}, []string{"penetrations/unbedded"}},
		{"screws without bedding", []string{"bedded: true\n", "bedded: false\n"}, []string{"penetrations/unbedded"}},
		{
			"core open in the wire hole",
			[]string{"0.5 in, edge: chamfered, core_edge: epoxy-annulus", "0.5 in, edge: chamfered, core_edge: raw"},
			[]string{"penetrations/core-unsealed"},
		},
		{
			"wires through a bare hole",
			[]string{"seal: {kind: gland, rating: IP66/IP67, grips: [0.5 in, 0.7 in], holes: 1}", "seal: {kind: none}"},
			[]string{"penetrations/edge-unprotected", "penetrations/not-watertight"},
		},
		{"gland too large", []string{"grips: [0.5 in, 0.7 in]", "grips: [0.7 in, 0.9 in]"}, []string{"penetrations/gland-off-range"}},
		{"deck switch for indoors", []string{"# hinged cover\n    ip: IP66", "# hinged cover\n    ip: IP54"}, []string{"equipment/ingress-rating-low"}},
		{"reversed", []string{"polarity: correct", "polarity: reversed"}, []string{"measurements/polarity-reversed", "measurements/reading-implausible"}},
		{"a bad joint", []string{"at_load: 11.19 V", "at_load: 10.40 V"}, []string{"measurements/drop-above-computed"}},
		{
			"never tested",
			[]string{"load: windlass, current", "current", "{kind: polarity, load: windlass,", "{kind: polarity,", "{kind: function, load: windlass,", "{kind: function,"},
			[]string{"documents/not-tested"},
		},
		{"signed too early", []string{"on-file, on: 2026-04-27", "on-file, on: 2026-04-20"}, []string{"documents/signed-before-tested"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			changed := text
			for i := 0; i < len(c.edits); i += 2 {
				require.Equal(t, 1, strings.Count(changed, c.edits[i]), "%q has one place", c.edits[i])
				changed = strings.Replace(changed, c.edits[i], c.edits[i+1], 1)
			}
			_, result := judged(t, engine, "windlass", changed)
			found := map[string]bool{}
			for i := range result.Verdicts {
				if v := &result.Verdicts[i]; v.Outcome == verdict.Breach {
					found[v.Rule.ID] = true
				}
			}
			assert.Equal(t, c.rules, slices.Sorted(maps.Keys(found)))
		})
	}
}
