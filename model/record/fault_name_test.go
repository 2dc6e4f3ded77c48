package record

import "testing"

func TestFaultsOfNamesAndShapes(t *testing.T) {
	for _, c := range nameFaults() {
		t.Run(c.name, c.check)
	}
}

func nameFaults() []faulty {
	return []faulty{
		{"an id used twice", head + `spaces:
  bow: {kind: locker}
  aft: {kind: locker}
  bow: {kind: bilge}
`, []string{
			`7:3: space "bow" is here twice; the first one stands in line 5, column 3: give this one another id`,
		}},
		{"a key used twice", head + `spaces:
  bow: {kind: locker, exposure: dry, kind: bilge}
`, []string{
			`5:38: "kind" is here twice; the first one stands in line 5, column 9: keep one of them`,
		}},
		{"an id with a dot", head + `spaces:
  bow.locker: {kind: locker}
`, []string{
			`5:3: "bow.locker" is no id of a space; use letters, digits, - and _`,
		}},
		{"an id that stands for a value", head + `spaces:
  unknown: {kind: locker}
  none: {kind: locker}
`, []string{
			`5:3: "unknown" cannot be an id: it stands for a value; give this space another one`,
			`6:3: "none" cannot be an id: it stands for a value; give this space another one`,
		}},
		{"an id that is a mapping", head + `spaces:
  ? {a: b}
  : {kind: locker}
`, []string{
			`5:5: the id of a space is a plain word; here stands a mapping`,
		}},
		{"a space that is not there", head + `spaces: {bow-locker: {kind: locker}}
components:
  b: {kind: pump, space: bow-loker}
`, []string{
			`6:26: "bow-loker" is no space of this record; did you mean "bow-locker"?`,
		}},
		{"a space where there are none", head + `components:
  b: {kind: pump, space: bow}
`, []string{
			`5:26: "bow" is no space of this record; the record has none`,
		}},
		{"a segment in a space that is not there", head + `spaces: {aft: {kind: locker}, bow: {kind: locker}}
components: {a: {kind: battery}, b: {kind: pump}}
conductors:
  P1:
    from: a.pos
    to: b.pos
    role: positive
    route:
      - {space: aft, length: 1 m}
      - {space: keel, length: 1 m}
`, []string{
			`13:17: "keel" is no space of this record; the record has aft and bow`,
		}},
		{"a component that is not there", head + `components: {house: {kind: battery}, pump: {kind: pump}}
conductors:
  P1: {from: hause.pos, to: pump.pos, role: positive}
`, []string{
			`6:14: "hause" is no component of this record; did you mean "house"?`,
		}},
		{"a terminal that the component lacks", head + `components: {house: {kind: battery}, f: {kind: fuse}}
conductors:
  P1: {from: house.plus, to: f.lin, role: positive}
`, []string{
			`6:14: the battery "house" has no terminal "plus"; it has pos and neg`,
			`6:30: the fuse "f" has no terminal "lin"; did you mean "line"?`,
		}},
		{"a terminal of a controller without links", head + `components: {house: {kind: battery}, box: {kind: controller}}
conductors:
  P1: {from: house.pos, to: box.supply, role: positive}
`, []string{
			`6:29: the controller "box" has no terminals yet; list the paths inside it under "links", such as {between: [in, out]}`,
		}},
		{"a terminal beside those of the links", head + `components:
  house: {kind: battery}
  box: {kind: relay, links: [{between: [supply, out], when: up}], coils: [{between: [up, neg], when: up}]}
conductors:
  P1: {from: house.pos, to: box.suply, role: positive}
`, []string{
			`8:29: the relay "box" has no terminal "suply"; did you mean "supply"?`,
		}},
		{"a terminal without its component", head + `components: {house: {kind: battery}, f: {kind: fuse}}
conductors:
  P1: {from: house, to: f.line.x, role: positive}
`, []string{
			`6:14: "house" is no terminal; write component.terminal, such as house.pos`,
			`6:25: "f.line.x" is no terminal; write component.terminal, such as main-fuse.line`,
		}},
		{"a conductor from a terminal to itself", head + `components: {f: {kind: fuse}}
conductors:
  P1: {from: f.line, to: f.line, role: positive}
`, []string{
			`6:26: "P1" goes from f.line to itself; name the terminal at its other end`,
		}},
		{"an end and its component that name different studs", head + `components: {f: {kind: fuse, stud: M8}, bus: {kind: busbar, stud: 5/16 in}}
conductors:
  P1:
    from: f.line
    to: bus.a
    role: positive
    ends: {from: {stud: M10}, to: {stud: M8}}
`, []string{
			`10:25: the stud is M10 here and M8 at components.f in line 4; look which it is`,
		}},
		{"a conductor within one busbar", head + `components: {bus: {kind: busbar}}
conductors:
  P1: {from: bus.a, to: bus.b, role: positive}
`, []string{
			`6:25: "P1" begins and ends on the busbar "bus", whose studs are one point; name the component at its other end`,
		}},
		{"a link from a terminal to itself", head + `components: {s: {kind: switch, links: [{between: [in, in]}]}}
`, []string{
			`4:50: "between" takes two different terminals, such as [supply, motor-a]`,
		}},
		{"a post that the component lacks", head + `components: {b: {kind: battery, posts: {plus: {stud: M8}}}}
`, []string{
			`4:41: the battery "b" has no terminal "plus"; it has pos and neg`,
		}},
		{"members, passes and loads that are not there", head + `components: {b: {kind: battery}, p: {kind: pump}}
conductors:
  P1: {from: b.pos, to: p.pos, role: positive}
bundles: {B1: {members: [P1, P2]}}
penetrations: {hole: {passes: [N1]}}
tests: [{kind: current, load: b, conductor: Q, penetration: hale}]
cases: {c: {loads: [q], closed: [p], when: [up]}}
`, []string{
			`7:30: "P2" is no conductor of this record; the record has P1`,
			`8:32: "N1" is no conductor of this record; the record has P1`,
			`9:31: "b" is a battery and no load; the record has p`,
			`9:45: "Q" is no conductor of this record; the record has P1`,
			`9:61: "hale" is no penetration of this record; did you mean "hole"?`,
			`10:21: "q" is no load of this record; the record has p`,
			`10:34: "p" is a pump and no switch, breaker or relay; the record has none`,
			`10:45: "up" is no command of a link or coil of this record; the record has none`,
		}},
		{"a bundle that is not listed where some are", head + `components: {b: {kind: battery}, p: {kind: pump}}
conductors:
  P1: {from: b.pos, to: p.pos, role: positive, route: [{bundle: B2}]}
bundles: {B1: {members: [P1]}}
`, []string{
			`6:65: "B2" is no bundle of this record; the record has B1`,
		}},
		{"waivers of nothing", head + `spaces: {bow: {kind: locker}}
waivers:
  - {rule: routing/no-drain, at: spaces.bov}
  - {rule: no-drain, at: space}
  - {rule: routing/no-drain, at: spaces.bow.kind.x}
`, []string{
			`6:34: "spaces.bov" is no part of this record; did you mean "spaces.bow"?`,
			`7:12: "no-drain" is no value of "rule"; write topic/rule, such as routing/support-too-far`,
			`7:26: "space" is no part of this record; write a path such as conductors.P4 or vessel`,
			`8:34: "spaces.bow.kind.x" is no part of this record: spaces.bow is, and has no such part; name spaces.bow`,
		}},
		{"the same twice in a list", head + `practice: [us-federal, workmanship, us-federal]
`, []string{
			`4:37: "us-federal" is in this list twice; the first one stands in line 4, column 12: keep one`,
		}},
		{"a text where a list belongs", head + `practice: us-federal
`, []string{
			`4:11: "practice" is the text "us-federal"; write a list, such as [us-federal, workmanship]`,
		}},
		{"a list where a mapping belongs", head + `spaces:
  - kind: locker
`, []string{
			`5:3: "spaces" is a list; write a mapping with the id of each space as its key`,
		}},
		{"a list where an entry belongs", head + `spaces:
  bow: [locker]
`, []string{
			`5:8: "bow" is a list; write a mapping with the keys kind, exposure, ambient, fuel_vapour, petrol_source and others`,
		}},
		{"a mapping where a list belongs", head + `tests: {kind: polarity}
`, []string{
			`4:8: "tests" is a mapping; write a list of tests, each beginning with -`,
		}},
		{"a mapping where a value belongs", head + `sign_off: {by: {name: x}}
`, []string{
			`4:16: "by" is a mapping; write one value, such as bench-2`,
		}},
		{"a list in a list", head + `practice: [[us-federal]]
`, []string{
			`4:12: an item of "practice" is a list; write plain values, such as [us-federal, workmanship]`,
		}},
		{"an entry that is unknown as a whole", head + `spaces:
  bow: unknown
`, []string{
			`5:8: a space cannot be unknown as a whole; write unknown for each value that is`,
		}},
		{"a kind that is unknown", head + `components:
  b: {kind: unknown}
`, []string{
			`5:13: "kind" has to be known; write "kind: fuse"`,
		}},
		{"keys without values", head + `spaces:
  bow: {kind: }
  aft:
tests:
sign_off:
  by:
  on: ~
`, []string{
			`5:9: "kind" has no value; write "kind: locker", or unknown, or leave the key out`,
			`6:3: "aft" has no value; write a mapping with the keys kind, exposure, ambient, fuel_vapour, petrol_source and others`,
			`7:1: "tests" has no value; write its parts below it, or leave the key out`,
			`9:3: "by" has no value; write "by: bench-2", or unknown, or leave the key out`,
			`10:7: "on" has no value; write "on: 2026-06-18", or unknown, or leave the key out`,
		}},
		{"required keys that are missing", head + `components: {b: {label: x}}
conductors: {P1: {length: 1 m}}
tests: [{load: b}]
waivers: [{reason: x}]
`, []string{
			`4:14: "components.b" has no "kind"; write "kind: fuse"`,
			`5:14: "conductors.P1" has no "from"; write "from: house.pos"`,
			`5:14: "conductors.P1" has no "role"; write "role: positive"`,
			`5:14: "conductors.P1" has no "to"; write "to: main-fuse.line"`,
			`6:9: "tests[0]" has no "kind"; write "kind: voltage-drop"`,
			`7:11: "waivers[0]" has no "at"; write "at: conductors.P4"`,
			`7:11: "waivers[0]" has no "rule"; write "rule: routing/support-too-far"`,
		}},
		{"a span in the wrong order", head + `penetrations: {p: {seal: {grips: [12 mm, 6 mm]}}}
`, []string{
			`4:34: 12 mm is more than 6 mm; write the least value first, such as [6 mm, 12 mm]`,
		}},
		{"a span of one value", head + `penetrations: {p: {seal: {grips: [12 mm]}}}
`, []string{
			`4:34: "grips" takes the least and the greatest value, such as [6 mm, 12 mm]`,
		}},
		{"a barrel in the wrong order", head + `components: {a: {kind: battery}, b: {kind: pump}}
conductors:
  P1: {from: a.pos, to: b.pos, role: positive, ends: {from: {barrel: [14 AWG, 16 AWG]}, to: {barrel: [14]}}}
`, []string{
			`6:70: 14 AWG is larger than 16 AWG; write the smaller conductor first, such as [16 AWG, 14 AWG]`,
			`6:103: "14" has no gauge system; a conductor size is written like "8 AWG", "2/0 AWG", "8 SAE" or "16 mm2"`,
		}},
		{"a control character in a text", head + `sign_off: {by: "a\x1b[31mb"}
`, []string{
			`4:16: "by" holds the control character U+001B; delete it`,
		}},
		{"an empty text", head + `sign_off: {by: '  '}
`, []string{
			`4:16: "by" is empty; write "by: bench-2", or unknown, or leave the key out`,
		}},
		{"a tag", head + `sign_off: {by: !person x}
`, []string{
			`4:24: the tag "!person" means nothing in a record; delete it`,
		}},
		{"a merge of what is no mapping", head + `spaces:
  bow: {<<: locker, kind: locker}
`, []string{
			`5:9: "<<" takes a mapping or a list of mappings by alias, such as "<<: *name"; here stands the text "locker"`,
		}},
	}
}
