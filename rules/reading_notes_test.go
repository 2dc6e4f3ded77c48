package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/verdict"
	"driploop/rules"
)

// noted is a lamp behind a fuse in an engine space of 50 °C, judged by 33 CFR 183
// alone. Its feed P2 is told entries beside those that all cases share.
const noted = `driploop: 1
job: {number: RN-1, title: Reading notes}
vessel: {system: 12 V, earthing: negative-ground}
practice: [us-federal]
spaces:
  bay: {kind: engine, ambient: 50 degC}
components:
  house: {kind: battery, nominal: 12 V}
  fuse: {kind: fuse, rating: FUSE}
  lamp: {kind: lamp, current: CURRENT}
conductors:
  P1: {from: house.pos, to: fuse.line, role: positive, size: 4 AWG, insulation: 105 degC, length: RUN, route: [{space: bay, length: RUN, in: open}]}
  P2: {from: FEED, to: lamp.pos, role: positive, size: SIZE, insulation: 105 degC, length: 2 m, route: [{space: bay, length: 2 m}]MORE}
  N1: {from: lamp.neg, to: house.neg, role: negative, size: 4 AWG, insulation: 105 degC, length: 2 m, route: [{space: bay, length: 2 m}]}
`

// noting fills the record; what is not given is harmless.
func noting(given map[string]string) string {
	text := noted
	for name, usual := range map[string]string{
		"FUSE": "20 A", "CURRENT": "5 A", "RUN": "150 mm", "FEED": "fuse.load", "SIZE": "10 AWG", "MORE": "",
	} {
		if value, ok := given[name]; ok {
			usual = value
		}
		text = strings.ReplaceAll(text, name, usual)
	}
	return text
}

// The points where 33 CFR 183 Subpart I leaves a choice, or is easily misread,
// each at its limit, just under and just over. All values: CFR annual edition
// 2015.
func TestReadingNotesOfSubpartI(t *testing.T) {
	engine, err := rules.New()
	require.NoError(t, err)
	type given = map[string]string
	const (
		oversized = "protection/device-oversized"
		tooFar    = "protection/device-too-far"
		bare      = "protection/unprotected"
		overload  = "conductors/overloaded"
		small     = "conductors/too-small"
	)
	met, breach, undecided, outside := verdict.Met, verdict.Breach, verdict.Undecided, verdict.NotApplicable
	for name, c := range map[string]struct {
		rule    string
		at      string
		given   given
		outcome verdict.Outcome
	}{
		// 183.455(c)(1): 150 % of Table 5 as it stands, 60 A for 10 AWG of 105 °C; note
		// 1 (0.85 at 105 °C), which would give 76.5 A in this engine space, is not named.
		"150 % of uncorrected Table 5, under": {oversized, "P2", given{"FUSE": "89.9 A"}, met},
		"150 % of uncorrected Table 5, at":    {oversized, "P2", given{"FUSE": "90 A"}, met},
		"150 % of uncorrected Table 5, over":  {oversized, "P2", given{"FUSE": "90.1 A"}, breach},

		// 183.425(b), (c): the current is held against Table 5 times note 1, 51 A.
		"current in an engine space, under": {overload, "P2", given{"CURRENT": "50.9 A"}, met},
		"current in an engine space, at":    {overload, "P2", given{"CURRENT": "51 A"}, met},
		"current in an engine space, over":  {overload, "P2", given{"CURRENT": "51.1 A"}, breach},

		// 183.460(a): 72 in from a battery along the conductor, in the open.
		"72 in without a sheath, under": {tooFar, "P1", given{"RUN": "71.9 in"}, met},
		"72 in without a sheath, at":    {tooFar, "P1", given{"RUN": "72 in"}, met},
		"72 in without a sheath, over":  {tooFar, "P1", given{"RUN": "72.1 in"}, breach},

		// 183.455(e) and 183.425(g): a pigtail is let go with less than 7 in exposed.
		"pigtail without a device, under":     {bare, "P2", given{"FEED": "house.pos", "MORE": ", pigtail: true, exposed: 6.9 in"}, met},
		"pigtail without a device, at":        {bare, "P2", given{"FEED": "house.pos", "MORE": ", pigtail: true, exposed: 7 in"}, breach},
		"pigtail without a device, over":      {bare, "P2", given{"FEED": "house.pos", "MORE": ", pigtail: true, exposed: 7.1 in"}, breach},
		"pigtail without a device, not given": {bare, "P2", given{"FEED": "house.pos", "MORE": ", pigtail: true"}, undecided},
		"pigtail of 18 AWG, under":            {small, "P2", given{"SIZE": "18 AWG", "MORE": ", sheath: none, pigtail: true, exposed: 6.9 in"}, met},
		"pigtail of 18 AWG, at":               {small, "P2", given{"SIZE": "18 AWG", "MORE": ", sheath: none, pigtail: true, exposed: 7 in"}, breach},
		"pigtail of 18 AWG, over":             {small, "P2", given{"SIZE": "18 AWG", "MORE": ", sheath: none, pigtail: true, exposed: 7.1 in"}, breach},

		// 183.425(g) frees communications and navigation equipment from sizing,
		// 183.455(e) does not free them from protection; resistance conductors are on
		// both lists.
		"communication, sizing":     {overload, "P2", given{"CURRENT": "55 A", "MORE": ", duty: communication"}, outside},
		"communication, protection": {bare, "P2", given{"FEED": "house.pos", "MORE": ", duty: communication"}, breach},
		"navigation, sizing":        {overload, "P2", given{"CURRENT": "55 A", "MORE": ", duty: navigation"}, outside},
		"navigation, protection":    {bare, "P2", given{"FEED": "house.pos", "MORE": ", duty: navigation"}, breach},
		"resistance, sizing":        {overload, "P2", given{"CURRENT": "55 A", "MORE": ", duty: resistance"}, outside},
		"resistance, protection":    {bare, "P2", given{"FEED": "house.pos", "MORE": ", duty: resistance"}, outside},

		// Electronic circuits under one ampere stand in 183.425(g) alone.
		"electronic circuit, under 1 A":  {small, "P2", given{"SIZE": "18 AWG", "CURRENT": "0.99 A", "MORE": ", sheath: none, duty: electronic"}, met},
		"electronic circuit, at 1 A":     {small, "P2", given{"SIZE": "18 AWG", "CURRENT": "1 A", "MORE": ", sheath: none, duty: electronic"}, breach},
		"electronic circuit, over 1 A":   {small, "P2", given{"SIZE": "18 AWG", "CURRENT": "1.01 A", "MORE": ", sheath: none, duty: electronic"}, breach},
		"electronic circuit, protection": {bare, "P2", given{"FEED": "house.pos", "CURRENT": "0.5 A", "MORE": ", duty: electronic"}, breach},

		// Table 5 has no value for 5 and 7 AWG: nothing is interpolated.
		"6 AWG has a value":             {overload, "P2", given{"SIZE": "6 AWG"}, met},
		"5 AWG has no value":            {overload, "P2", given{"SIZE": "5 AWG"}, undecided},
		"7 AWG has no value":            {overload, "P2", given{"SIZE": "7 AWG"}, undecided},
		"8 AWG has a value":             {overload, "P2", given{"SIZE": "8 AWG"}, met},
		"5 AWG has no value for a fuse": {oversized, "P2", given{"SIZE": "5 AWG"}, undecided},
		"7 AWG has no value for a fuse": {oversized, "P2", given{"SIZE": "7 AWG"}, undecided},
	} {
		t.Run(name, func(t *testing.T) {
			rule, err := engine.Rule(c.rule)
			require.NoError(t, err)
			text := noting(c.given)
			var found []string
			for _, v := range judged(t, engine, rule, text) {
				if v.Subject == "conductors."+c.at {
					found = append(found, fmt.Sprint(v.Outcome))
				}
			}
			assert.Equal(t, []string{string(c.outcome)}, found, text)
		})
	}
}
