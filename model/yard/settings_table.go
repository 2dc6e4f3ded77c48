package yard

import (
	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/verdict"
)

// GateNone lets every breach pass.
const GateNone = "none"

// setting is what the format of the settings says of one key. The same rows
// drive reading, the advice in messages and what is told of the settings.
type setting struct {
	key     string
	says    string
	example string
	words   []string              // the only words allowed, if any
	shape   func(*setting) object // of the value, as JSON Schema
	read    func(*reader, *setting, node, *Settings)
}

// settings lists the keys of a driploop.yaml, in the order that they are told.
func settings() []setting {
	return []setting{
		{
			key: "practice", says: "Practice sets that every record is judged by, beside those that it names itself.",
			example: "[us-federal, us-voluntary, workmanship]", words: record.PracticeSets(),
			shape: someWords,
			read:  func(r *reader, k *setting, n node, s *Settings) { s.Practice = List{r.list(k, n), n.at.Start} },
		},
		{
			key: "gate", says: "Least severity of a breach that fails a check.", example: "warning", words: append(Severities(), GateNone),
			shape: oneWord,
			read:  func(r *reader, k *setting, n node, s *Settings) { s.Gate = Word{r.word(k, n), n.at.Start} },
		},
		{
			key: "complete", says: "Whether what is undecided fails a check, too.", example: "true",
			shape: yesOrNo,
			read:  func(r *reader, k *setting, n node, s *Settings) { s.Complete = Flag{r.flag(k, n), n.at.Start} },
		},
		{
			key: "units", says: "Units that reports print in.", example: "metric", words: quantity.Systems(),
			shape: oneWord,
			read:  func(r *reader, k *setting, n node, s *Settings) { s.Units = Word{r.word(k, n), n.at.Start} },
		},
		{
			key: "severity", says: "Rules whose breaches get another severity, each with the reason.",
			example: `{routing/no-slack: {to: notice, reason: "jobs here are on trailers"}}`,
			shape:   changesOfSeverity,
			read:    func(r *reader, k *setting, n node, s *Settings) { s.Severity = r.changes(k, n) },
		},
		{
			key: "include", says: "Patterns of the files below this folder that are looked at; left out: all.", example: `["boats/**"]`,
			shape: someTexts,
			read:  func(r *reader, k *setting, n node, s *Settings) { s.Include = r.patterns(k, n) },
		},
		{
			key: "exclude", says: "Patterns of the files that are not looked at.", example: `["archive/**", "**/draft-*.yaml"]`,
			shape: someTexts,
			read:  func(r *reader, k *setting, n node, s *Settings) { s.Exclude = r.patterns(k, n) },
		},
		{
			key: "rules", says: "Folders of the yard's own rules.", example: "[house-rules]",
			shape: someTexts,
			read:  func(r *reader, k *setting, n node, s *Settings) { s.Rules = r.folders(k, n, s.Root) },
		},
		{
			key: "documents", says: `Entries and files that a job of a kind has to have; "any" stands for every kind.`,
			example: `{any: {entries: [sign_off.by]}, battery-bank: {files: ["photos/*.jpg"]}}`,
			shape:   requirements,
			read:    func(r *reader, k *setting, n node, s *Settings) { s.Documents = r.documents(k, n) },
		},
		{
			key: "baseline", says: "File of the breaches that were there before, which do not fail a check.", example: "driploop.baseline.json",
			shape: oneText,
			read:  func(r *reader, k *setting, n node, s *Settings) { s.Baseline = Word{r.word(k, n), n.at.Start} },
		},
	}
}

// Severities lists the signal words, worst first.
func Severities() []string {
	return []string{verdict.Danger.String(), verdict.Warning.String(), verdict.Caution.String(), verdict.Notice.String()}
}
