package reports

import (
	"bytes"
	"encoding/json"
	"io"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// JSONFormat names the version of the JSON format.
const JSONFormat = "driploop.verdicts/1"

type jsonTool struct {
	Version string `json:"version"`
	Rules   string `json:"rules"`
}

type jsonRecord struct {
	Path     string          `json:"path"`
	SHA256   string          `json:"sha256"`
	Job      string          `json:"job"`
	Counts   jsonCounts      `json:"counts"`
	Rules    []jsonRuleCount `json:"rules,omitempty"` // what each rule looked at, with Options.All
	Verdicts []jsonVerdict   `json:"verdicts"`
	Since    string          `json:"since,omitempty"` // revision; verdicts are then those that changed
	Cured    []jsonCured     `json:"cured,omitempty"`
	// Baseline counts what a baseline keeps from the verdicts: breaches by severity,
	// and what is undecided.
	Baseline map[string]int `json:"baseline,omitempty"`
}

type jsonRuleCount struct {
	Rule     string     `json:"rule"`
	Subjects int        `json:"subjects"`
	Counts   jsonCounts `json:"counts"`
}

type jsonCounts struct {
	Met           int `json:"met"`
	Breach        int `json:"breach"`
	Undecided     int `json:"undecided"`
	NotApplicable int `json:"not-applicable"`
	Waived        int `json:"waived"`
}

type jsonVerdict struct {
	Rule        string            `json:"rule"`
	Outcome     verdict.Outcome   `json:"outcome"`
	Severity    verdict.Severity  `json:"severity"`
	Subject     string            `json:"subject"`
	At          verdict.Position  `json:"at"`
	Says        string            `json:"says"`
	Figures     map[string]string `json:"figures"`
	Limit       map[string]string `json:"limit"`
	Missing     []string          `json:"missing"`
	Remedy      string            `json:"remedy"`
	Sources     []jsonSource      `json:"sources"`
	Waiver      *jsonWaiver       `json:"waiver,omitempty"`
	Recast      *jsonRecast       `json:"recast,omitempty"` // by the yard's settings
	Change      verdict.Change    `json:"change,omitempty"` // since another revision
	Fingerprint string            `json:"fingerprint"`
}

type jsonSource struct {
	ID     string        `json:"id"`
	Clause string        `json:"clause"`
	Force  verdict.Force `json:"force"`
	Binds  *bool         `json:"binds,omitempty"` // of law; absent where the record cannot tell
}

type jsonWaiver struct {
	By     string `json:"by"`
	Reason string `json:"reason"`
	Until  string `json:"until"`
}

type jsonRecast struct {
	From  verdict.Severity `json:"from"`
	Why   string           `json:"why"`
	Where string           `json:"where"`
}

type jsonCured struct {
	Rule        string           `json:"rule"`
	Outcome     verdict.Outcome  `json:"outcome"`
	Severity    verdict.Severity `json:"severity"`
	Subject     string           `json:"subject"`
	Fingerprint string           `json:"fingerprint"`
}

type jsonError struct {
	Path   string `json:"path"`
	Line   int    `json:"line,omitempty"`
	Column int    `json:"column,omitempty"`
	Says   string `json:"says"`
}

func recordJSON(rec *verdict.Record, o Options) jsonRecord {
	out := jsonRecord{Path: rec.Path, SHA256: rec.SHA256, Job: rec.Job, Verdicts: []jsonVerdict{}, Counts: countsJSON(rec.Counts)}
	for _, r := range rec.ByRule {
		out.Rules = append(out.Rules, jsonRuleCount{Rule: r.Rule.ID, Subjects: r.Counts.Total(), Counts: countsJSON(r.Counts)})
	}
	for i := range rec.Verdicts {
		v := &rec.Verdicts[i]
		if o.All || v.Outcome != verdict.Met && v.Outcome != verdict.NotApplicable {
			out.Verdicts = append(out.Verdicts, verdictJSON(v, rec.Job, o.Units))
		}
	}
	out.Since = rec.Since
	for _, c := range rec.Cured {
		out.Cured = append(out.Cured, jsonCured{c.Rule.ID, c.Outcome, c.Severity, c.Subject, c.Fingerprint})
	}
	for severity, n := range rec.Known {
		out.count(severity.String(), n)
	}
	out.count(string(verdict.Undecided), rec.KnownOpen)
	return out
}

func countsJSON(c verdict.Counts) jsonCounts {
	return jsonCounts{
		Met: c[verdict.Met], Breach: c[verdict.Breach], Undecided: c[verdict.Undecided],
		NotApplicable: c[verdict.NotApplicable], Waived: c[verdict.Waived],
	}
}

func (r *jsonRecord) count(what string, n int) {
	if n > 0 && r.Baseline == nil {
		r.Baseline = map[string]int{}
	}
	if n > 0 {
		r.Baseline[what] = n
	}
}

func verdictJSON(v *verdict.Verdict, job string, units quantity.System) jsonVerdict {
	show := v.Show(units)
	out := jsonVerdict{
		Rule: v.Rule.ID, Outcome: v.Outcome, Severity: v.Severity, Subject: v.Subject, At: v.At.Start,
		Says: says(v, show), Figures: printed(v.Figures, show), Limit: printed(v.Limit, show),
		Missing: []string{}, Remedy: v.Text(flow(v.Remedy), show), Sources: []jsonSource{}, Fingerprint: v.Fingerprint(job),
	}
	for _, gap := range v.Missing {
		out.Missing = append(out.Missing, gap.String())
	}
	for _, c := range v.Sources {
		out.Sources = append(out.Sources, jsonSource{ID: c.Source, Clause: c.Clause, Force: c.Force, Binds: c.Binds})
	}
	out.Change = v.Change
	if v.Recast != nil {
		out.Recast = &jsonRecast{From: v.Recast.From, Why: v.Recast.Why, Where: v.Recast.Where}
	}
	if v.Waiver != nil {
		out.Waiver = &jsonWaiver{By: v.Waiver.By, Reason: v.Waiver.Reason, Until: v.Waiver.Until}
	}
	return out
}

// says puts the verdict in one sentence, whatever its outcome.
func says(v *verdict.Verdict, show func(verdict.Figure) string) string {
	switch v.Outcome {
	case verdict.Met:
		return "met"
	case verdict.Undecided:
		missing := make([]string, 0, len(v.Missing))
		for _, gap := range v.Missing {
			missing = append(missing, gap.String())
		}
		return "cannot be decided: " + strings.Join(missing, "; ")
	}
	return v.Text(flow(v.Says), show)
}

func printed(figures []verdict.Figure, show func(verdict.Figure) string) map[string]string {
	out := map[string]string{}
	for _, f := range figures {
		out[f.Name] = show(f)
	}
	return out
}

// WriteJSON writes a tree with two spaces of indentation. Characters that a
// terminal would act on are escaped, which JSON allows within its strings.
func WriteJSON(w io.Writer, tree any) error {
	text, err := jsonText(tree, indented(""))
	if err == nil {
		_, err = w.Write(append(text, '\n'))
	}
	return err
}

// layout is how the text of a tree is laid out.
type layout func(*json.Encoder)

// indented puts each entry on a line; the prefix begins each line but the first.
func indented(prefix string) layout {
	return func(e *json.Encoder) { e.SetIndent(prefix, "  ") }
}

// compact puts the whole tree on one line.
func compact(*json.Encoder) {}

// jsonText is the text of a tree.
func jsonText(tree any, lay layout) ([]byte, error) {
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	lay(encoder)
	if err := encoder.Encode(tree); err != nil {
		return nil, err
	}
	b.Truncate(b.Len() - 1) // the encoder's own line end
	if isGraphicASCII(b.Bytes()) {
		return b.Bytes(), nil
	}
	escaped := make([]byte, 0, b.Len())
	for text := b.Bytes(); len(text) > 0; {
		r, size := utf8.DecodeRune(text)
		switch {
		case r == '\n' || unicode.IsGraphic(r):
			escaped = append(escaped, text[:size]...)
		case r > 0xffff:
			escaped = append(escaped, surrogates(r)...)
		default:
			escaped = append(escaped, `\u`+hex4(r)...)
		}
		text = text[size:]
	}
	return escaped, nil
}

func isGraphicASCII(text []byte) bool {
	for _, c := range text {
		if (c < ' ' || c > '~') && c != '\n' {
			return false
		}
	}
	return true
}

func surrogates(r rune) string {
	r -= 0x10000
	return `\u` + hex4(0xd800+r>>10) + `\u` + hex4(0xdc00+r&0x3ff)
}

func hex4(r rune) string { return strconv.FormatInt(int64(r)|0x10000, 16)[1:] }
