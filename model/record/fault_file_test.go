package record

import "testing"

func TestFaultsOfTheFile(t *testing.T) {
	for _, c := range fileFaults() {
		t.Run(c.name, c.check)
	}
}

func fileFaults() []faulty {
	return []faulty{
		{"a missing version and sections", `spaces: {}
`, []string{
			`1:1: the record has no "driploop"; write "driploop: 1"`,
			`1:1: the record has no "job"; write a mapping under "job"`,
			`1:1: the record has no "vessel"; write a mapping under "vessel"`,
		}},
		{"another version", `driploop: 2
job: {number: T-1}
vessel: {system: 12 V}
`, []string{
			`1:11: "2" is no version of the record format that this program reads; write "driploop: 1"`,
		}},
		{"a version with a unit", `driploop: 1.0
job: {number: T-1}
vessel: {system: 12 V}
`, []string{
			`1:11: "1.0" is no version of the record format that this program reads; write "driploop: 1"`,
		}},
		{"an empty file", ``, []string{
			`1:1: the file holds no record; begin it with "driploop: 1"`,
		}},
		{"a file of comments", `# nothing yet
`, []string{
			`1:1: the file holds no record; begin it with "driploop: 1"`,
		}},
		{"several documents", head + `---
driploop: 1
`, []string{
			`4:1: a second document begins here; write one record a file`,
		}},
		{"a list at the top", `- driploop: 1
`, []string{
			`1:1: a record is a mapping that begins with "driploop: 1"; here stands a list`,
		}},
		{"a text at the top", `driploop 1
`, []string{
			`1:1: a record is a mapping that begins with "driploop: 1"; here stands the text "driploop 1"`,
		}},
		{"a tab in the indentation", head + "spaces:\n\tbow: {kind: locker}\n", []string{
			`5:1: a tab stands here; indent with spaces`,
		}},
		{"a colon in a value", head + `sign_off: {by: x}
spaces:
  bow: kind: locker
`, []string{
			`6:12: no key can stand here: the line above lacks its colon, this one is indented too far, or a value that holds a colon lacks its quotation marks`,
		}},
		{"a quotation mark that is not closed", head + `sign_off:
  by: "bench-2
  licence: on-file
  on: 2026-06-18
`, []string{
			`5:7: a quotation mark opens here and is not closed`,
		}},
		{"a brace that is not closed", head + `sign_off: {by: bench-2
spaces:
  bow: {kind: locker}
`, []string{
			`5:8: a comma is missing before here, or the { in line 4, column 11 is not closed`,
		}},
		{"a missing comma", head + `spaces:
  bow: {kind: locker exposure: dry}
`, []string{
			`5:31: a comma is missing before here, or the { in line 5, column 8 is not closed`,
		}},
		{"a line that is indented too far", head + `sign_off:
  by: bench-2
    on: 2026-06-18
`, []string{
			`6:7: no key can stand here: the line above lacks its colon, this one is indented too far, or a value that holds a colon lacks its quotation marks`,
		}},
		{"a line that is not indented enough", head + `sign_off:
    by: bench-2
  on: 2026-06-18
`, []string{
			`6:3: this does not line up with the keys above it: check its indentation, and that quotation marks are closed`,
		}},
		{"a key without a colon", head + `sign_off:
  by bench-2
  on: 2026-06-18
`, []string{
			`6:5: no key can stand here: the line above lacks its colon, this one is indented too far, or a value that holds a colon lacks its quotation marks`,
		}},
		{"a value that begins with an at sign", head + `sign_off:
  by: @bench
`, []string{
			`5:7: a value cannot begin with "@"; put it in quotation marks`,
		}},
		{"a backslash in double quotes", head + `sign_off:
  by: "C:\yard"
`, []string{
			`5:10: a backslash in double quotation marks begins an escape; use single quotation marks`,
		}},
		{"an alias without its anchor", head + `spaces:
  bow: *dry
`, []string{
			`5:8: anchor 'dry' is not known here: write "&" and its name before the part that it stands for`,
		}},
		{"a list item beside keys", head + `spaces:
  bow: {kind: locker}
  - aft
`, []string{
			`6:3: this does not line up with the keys above it: check its indentation, and that quotation marks are closed`,
		}},
		{"a NUL byte", head + "sign_off:\n  by: a\x00b\n", []string{
			`5:8: a NUL byte stands here; save the file as plain text in UTF-8`,
		}},
		{"a control character", head + "sign_off:\n  by: a\ab\n", []string{
			`5:8: the control character U+0007 stands here; delete it`,
		}},
	}
}
