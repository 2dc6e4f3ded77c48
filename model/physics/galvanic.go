package physics

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"

	"driploop/model/figure"
	"driploop/model/quantity"
)

const sourceAnodic = "anodic index, MIL-DTL-14072F table VI as republished"

type anodicRow struct {
	volts        float64
	group, trust string
}

var anodic = sync.OnceValue(func() map[string]anodicRow {
	rows := map[string]anodicRow{}
	for _, line := range load("anodic.csv") {
		v, err := strconv.ParseFloat(line[1], 64)
		if err != nil {
			panic(err)
		}
		rows[line[0]] = anodicRow{v, line[2], line[3]}
	}
	return rows
})

// AnodicIndex returns the potential of a metal's surface below gold in V.
//
// Given: a metal of the table, such as tin, copper, stainless-316; for a plated
// part the plating.
// Source: MIL-DTL-14072F table VI as republished; secondary, the less
// noble end from steel on from memory, unverified.
func AnodicIndex(metal string) (volts float64, ok bool) {
	row, ok := anodic()[metal]
	return row.volts, ok
}

// Surface returns the metal that touches: the plating where there is one, named
// by itself or within the metal, as in tin-plated-copper.
// Source: MIL-DTL-14072F counts only the touching surface; read.
func Surface(metal, plating string) string {
	if plating != "" && plating != "none" {
		return plating
	}
	if surface, _, plated := strings.Cut(metal, "-plated-"); plated {
		return surface
	}
	return metal
}

// AnodicGap returns the difference of the anodic index of two touching surfaces
// in V, with its working. It is open for a metal that the table does not name.
func AnodicGap(a, b string) figure.Figure {
	rows := [2]anodicRow{}
	for i, metal := range [2]string{a, b} {
		row, ok := anodic()[metal]
		if !ok {
			return figure.Open(figure.Because(fmt.Sprintf("the anodic index holds no metal called %q", metal)))
		}
		rows[i] = row
	}
	gap := quantity.Round(math.Abs(rows[0].volts - rows[1].volts))
	return figure.Worked(gap, "V", func() []figure.Step {
		return []figure.Step{{
			Formula: "gap of the anodic index: |E1 − E2|", Source: sourceAnodic,
			Inputs: []figure.Input{
				{Symbol: "E1", Value: rows[0].volts, Unit: "V", From: a + " (" + rows[0].group + "); " + rows[0].trust},
				{Symbol: "E2", Value: rows[1].volts, Unit: "V", From: b + " (" + rows[1].group + "); " + rows[1].trust},
			},
			Result: gap, Unit: "V",
		}}
	})
}
