package reports_test

import (
	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/verdict"
	"driploop/reports"
)

// The record of these tests is invented, as is every figure in it: they test
// how a result is shown, not whether it is right.
const launchText = `driploop: 1
job: {number: HL-2207, title: Bow thruster}
vessel: {name: Marigold, system: 12 V}
conductors:
  P1: {from: house.pos, to: main-fuse.line, role: positive, size: 2/0 AWG, length: 2.4 m, colour: red, insulation: 105 degC}
  P2:
    from: main-fuse.load
    to: thruster.pos
    size: unknown
  N1:
    from: thruster.neg
    to: house.neg
penetrations:
  deck-plug:
    hole: {diameter: 14 mm, edge: raw}
`

var (
	tooFar = &verdict.Rule{
		ID: "protection/device-too-far", Title: "Fuse or breaker too far from the source", Severity: verdict.Danger, Subject: "runs",
		Why: "A short in the stretch ahead of the device is fed by\n  the whole bank, and nothing opens it.",
	}
	overloaded = &verdict.Rule{
		ID: "conductors/overloaded", Title: "Conductor carries more than it may", Severity: verdict.Danger, Subject: "conductors",
		Why: "Insulation ages fast and then burns.",
	}
	raw = &verdict.Rule{
		ID: "penetrations/edge-unprotected", Title: "Raw edge against a conductor", Severity: verdict.Warning, Subject: "penetrations",
		Why: "The edge works through the insulation.",
	}
	unlabelled = &verdict.Rule{
		ID: "documents/conductor-unlabelled", Title: "Conductor not identified at both ends", Severity: verdict.Notice, Subject: "conductors",
		Why: "The next person cuts the wrong one.",
	}
	drop = &verdict.Rule{ID: "conductors/drop-excessive", Title: "Voltage drop too large", Severity: verdict.Warning, Subject: "loads"}
)

func yes() *bool { b := true; return &b }
func no() *bool  { b := false; return &b }

func citation(set, id, title, edition, clause, asks string, force verdict.Force, trust verdict.Trust, binds *bool) verdict.Cited {
	return verdict.Cited{
		Citation: verdict.Citation{Set: set, Source: id, Clause: clause, Asks: asks, Trust: trust},
		Title:    title, Edition: edition, Force: force, Binds: binds,
	}
}

func span(line, from, to int) verdict.Range {
	return verdict.Range{Start: verdict.Position{Line: line, Column: from}, End: verdict.Position{Line: line, Column: to}}
}

// launch is a record with every outcome.
func launch() verdict.Record {
	law := citation("us-federal", "33-cfr-183", "33 CFR part 183, subpart I", "2025", "183.455(b)(1)",
		"device within 7 in of the source along the conductor", verdict.Law, verdict.Read, yes())
	reported := citation("us-voluntary", "abyc-e-11", "Small-craft practice E-11", "", "",
		"device within 7 in, farther if enclosed", verdict.Standard, verdict.Secondary, nil)
	work := citation("workmanship", "practice", "Trade practice", "", "", "both ends carry the same mark", verdict.Practice, verdict.NoSource, nil)
	verdicts := []verdict.Verdict{
		{
			Rule: tooFar, Outcome: verdict.Breach, Severity: verdict.Danger, Subject: "conductors.P1", At: span(5, 77, 90),
			Says:    "{unprotected} of conductor from {from} without a device",
			Figures: []verdict.Figure{{Name: "unprotected", Quantity: quantity.New(2400, "mm")}, {Name: "from", Text: "house.pos"}},
			Limit:   []verdict.Figure{{Name: "unprotected", Quantity: quantity.New(7, "in")}},
			Remedy:  "Move the device to within {limit.unprotected} of {from}.",
			Sources: []verdict.Cited{law, reported}, ID: "f1",
		},
		{
			Rule: unlabelled, Outcome: verdict.Breach, Severity: verdict.Notice, Subject: "conductors.P2", At: span(6, 3, 5),
			Says: "marked at no end", Remedy: "Mark both ends.", Sources: []verdict.Cited{work}, ID: "f2",
		},
		{
			Rule: unlabelled, Outcome: verdict.Breach, Severity: verdict.Notice, Subject: "conductors.N1", At: span(10, 3, 5),
			Says: "marked at one end", Remedy: "Mark both ends.", Sources: []verdict.Cited{work}, ID: "f3",
		},
		{
			Rule: overloaded, Outcome: verdict.Undecided, Severity: verdict.Danger, Subject: "conductors.P2", At: span(6, 3, 5),
			Missing: []verdict.Gap{{Field: "conductors.P2.size"}, {Field: "conductors.P2.insulation"}}, ID: "f4",
		},
		{
			Rule: overloaded, Outcome: verdict.Undecided, Severity: verdict.Danger, Subject: "conductors.N1", At: span(10, 3, 5),
			Missing: []verdict.Gap{{Field: "conductors.N1.size"}, {Field: "conductors.N1.insulation"}}, ID: "f5",
		},
		{
			Rule: drop, Outcome: verdict.Undecided, Severity: verdict.Warning, Subject: "components.thruster", At: span(8, 5, 7),
			Missing: []verdict.Gap{
				{Field: "conductors.P2.size"},
				{Field: "conductors.N1.size"},
				{Field: "components.thruster.current"},
				{Why: "the thruster stands in no solved circuit"},
			},
			ID: "f6",
		},
		{
			Rule: raw, Outcome: verdict.Waived, Severity: verdict.Warning, Subject: "penetrations.deck-plug", At: span(15, 32, 35),
			Says: "the edge of the hole is {edge}", Figures: []verdict.Figure{{Name: "edge", Text: "raw"}},
			Remedy: "Fit a grommet.", Waiver: &verdict.Waiver{By: "foreman", Reason: "moulded liner, photographed", Until: "2027-06-01"},
			Sources: []verdict.Cited{law}, ID: "f7",
		},
		{
			Rule: overloaded, Outcome: verdict.Waived, Severity: verdict.Danger, Subject: "conductors.P1", At: span(5, 3, 5),
			Says: "carries {current}", Figures: []verdict.Figure{{Name: "current", Quantity: quantity.New(310, "A")}},
			Limit:  []verdict.Figure{{Name: "current", Quantity: quantity.New(283, "A")}},
			Remedy: "Fit a larger conductor.", Waiver: &verdict.Waiver{By: "foreman", Reason: "short runs only", Until: "2026-12-31"},
			Sources: []verdict.Cited{{
				Citation: verdict.Citation{Set: "us-federal", Source: "33-cfr-183", Clause: "table 5", Asks: "no more than the table", Trust: verdict.Read},
				Title:    "33 CFR part 183, subpart I", Edition: "2025", Force: verdict.Law, Binds: no(),
			}},
			ID: "f8",
		},
		{
			Rule: drop, Outcome: verdict.Met, Severity: verdict.Warning, Subject: "components.pump", At: span(8, 5, 7),
			Figures: []verdict.Figure{{Name: "drop", Quantity: quantity.New(2.1, "%")}},
			Limit:   []verdict.Figure{{Name: "drop", Quantity: quantity.New(10, "%")}},
			ID:      "f9",
		},
		{Rule: drop, Outcome: verdict.Met, Severity: verdict.Warning, Subject: "components.lamp", At: span(8, 5, 7), ID: "f10"},
		{
			Rule: tooFar, Outcome: verdict.NotApplicable, Severity: verdict.Danger, Subject: "conductors.N1", At: span(10, 3, 5),
			Says: "judged are only runs from a source", ID: "f11",
		},
	}
	verdict.Sort(verdicts)
	return verdict.Record{
		Path: "yard/launch.yaml", SHA256: "0123abcd", Job: "HL-2207", Title: "Bow thruster", Vessel: "Marigold",
		Practice: []string{"us-federal", "us-voluntary", "workmanship"}, Verdicts: verdicts, Counts: verdict.Count(verdicts),
	}
}

// places holds where the entries of launchText stand, as far as tests ask.
func places() map[string]verdict.Range {
	return map[string]verdict.Range{
		"vessel": span(3, 1, 7), "conductors": span(4, 1, 11), "conductors.P1": span(5, 3, 5), "conductors.P2": span(6, 3, 5),
		"conductors.P2.size": span(9, 5, 9), "conductors.N1": span(10, 3, 5), "penetrations": span(13, 1, 13),
	}
}

func sources() map[string]*reports.Source {
	return map[string]*reports.Source{"yard/launch.yaml": reports.NewSource([]byte(launchText), record.PlacesOf(places()).Find)}
}

func run(records ...verdict.Record) *verdict.Run {
	return &verdict.Run{Version: "devel", Rules: "sha256:00ff", Records: records}
}

// clean is a record in which everything is met.
func clean() verdict.Record {
	verdicts := []verdict.Verdict{{Rule: drop, Outcome: verdict.Met, Severity: verdict.Warning, Subject: "components.pump", At: span(8, 5, 7)}}
	return verdict.Record{
		Path: "yard/clean.yaml", Job: "HL-1", Title: "Lamp", Vessel: "Teasel", Practice: []string{"us-federal"},
		Verdicts: verdicts, Counts: verdict.Count(verdicts),
	}
}

// hostile is a record whose every text tries to drive the terminal.
func hostile() verdict.Record {
	return hostileWith("x\x1b[2Jy\u202ez\nw\u009bq\xffr\u2066s")
}

// hostileWith is a record whose every text is the same.
func hostileWith(evil string) verdict.Record {
	verdicts := []verdict.Verdict{
		{
			Rule: tooFar, Outcome: verdict.Breach, Severity: verdict.Danger, Subject: "conductors." + evil, At: span(1, 1, 4),
			Says: "from {from}", Figures: []verdict.Figure{{Name: "from", Text: evil}}, Remedy: "Leave {from}.",
		},
		{
			Rule: raw, Outcome: verdict.Waived, Severity: verdict.Danger, Subject: evil, At: span(1, 1, 4), Says: "raw",
			Waiver: &verdict.Waiver{By: evil, Reason: evil, Until: evil},
		},
		{
			Rule: drop, Outcome: verdict.Undecided, Severity: verdict.Warning, Subject: evil, At: span(1, 1, 4),
			Missing: []verdict.Gap{{Field: "conductors." + evil + ".size", Why: evil}, {Why: evil}},
		},
		{Rule: drop, Outcome: verdict.Met, Subject: evil, Figures: []verdict.Figure{{Name: evil, Text: evil}}},
		{Rule: drop, Outcome: verdict.NotApplicable, Subject: evil, Says: evil},
	}
	return verdict.Record{
		Path: "yard/" + evil + ".yaml", Job: evil, Title: evil, Vessel: evil, Practice: []string{evil},
		Verdicts: verdicts, Counts: verdict.Count(verdicts),
	}
}

func hostileRun() *verdict.Run {
	r := run(hostile())
	r.Faults = []verdict.Fault{{Path: hostile().Path, At: verdict.Position{Line: 1, Column: 2}, Says: hostile().Job}}
	return r
}
