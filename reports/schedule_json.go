package reports

import (
	"io"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/verdict"
)

// FiguresFormat names the version of the JSON format of figures.
const FiguresFormat = "driploop.figures/1"

type figuresJSON struct {
	Format   string        `json:"format"`
	Record   string        `json:"record"`
	Job      string        `json:"job"`
	Problems []problemJSON `json:"problems"`
	Figures  []figureJSON  `json:"figures"`
	Cases    []caseJSON    `json:"cases"`
	Caution  string        `json:"caution"`
}

type problemJSON struct {
	Kind    string           `json:"kind"`
	Subject string           `json:"subject"`
	At      verdict.Position `json:"at"`
	Says    string           `json:"says"`
}

// figureJSON is one figure; without a value it says what it waits for.
type figureJSON struct {
	Subject string     `json:"subject"`
	Name    string     `json:"name"`
	Value   *float64   `json:"value"`
	Unit    string     `json:"unit"`
	Missing []string   `json:"missing"`
	Working []stepJSON `json:"working"`
}

type stepJSON struct {
	Formula string      `json:"formula"`
	Source  string      `json:"source"`
	Inputs  []inputJSON `json:"inputs"`
	Result  float64     `json:"result"`
	Unit    string      `json:"unit"`
}

type inputJSON struct {
	Symbol string  `json:"symbol"`
	Value  float64 `json:"value"`
	Unit   string  `json:"unit"`
	From   string  `json:"from"`
	Line   int     `json:"line,omitempty"` // in the file, of an entry of the record
}

type caseJSON struct {
	Name         string             `json:"name"`
	Kind         circuit.CaseKind   `json:"kind"`
	Load         string             `json:"load,omitempty"`
	Problem      string             `json:"problem,omitempty"`
	Missing      []string           `json:"missing"`
	Sources      map[string]float64 `json:"sources_a"`
	Currents     map[string]float64 `json:"currents_a"`
	Voltages     map[string]float64 `json:"voltages_v"`
	Temperatures map[string]float64 `json:"temperatures_degc"`
}

// ScheduleJSON writes every figure of the schedule with its working, and every
// operating case whole. Of subjects, ids or paths in the record, only those are
// told; none stands for all.
func ScheduleJSON(w io.Writer, r *record.Record, a *circuit.Analysis, subjects []string, o Options) error {
	s := newSchedule(io.Discard, r, a, o)
	s.loads()
	s.sheets()
	out := figuresJSON{
		Format: FiguresFormat, Record: r.Name, Job: r.Job.Number.V, Caution: Caution,
		Problems: []problemJSON{}, Figures: []figureJSON{}, Cases: []caseJSON{},
	}
	for _, p := range a.Problems {
		out.Problems = append(out.Problems, problemJSON{string(p.Kind), p.Path, p.At.Start, p.Says})
	}
	for _, n := range s.of(subjects) {
		out.Figures = append(out.Figures, s.figureJSON(n))
	}
	for _, c := range a.Cases.All() {
		one := caseJSON{
			Name: c.Name, Kind: c.Kind, Load: c.Load, Missing: gapTexts(c.Gaps),
			Sources: rounded(c.Sources), Currents: rounded(c.Currents), Voltages: rounded(c.Voltages), Temperatures: rounded(c.Temperatures),
		}
		if c.Problem != nil {
			one.Problem = c.Problem.Says
		}
		out.Cases = append(out.Cases, one)
	}
	return WriteJSON(w, out)
}

func (s *schedule) figureJSON(n named) figureJSON {
	f := figureJSON{Subject: n.subject, Name: n.name, Unit: n.fig.Unit, Missing: gapTexts(n.fig.Gaps), Working: []stepJSON{}}
	if n.fig.Known {
		f.Value = &n.fig.Value
	}
	for _, step := range n.fig.Working() {
		j := stepJSON{Formula: step.Formula, Source: step.Source, Inputs: []inputJSON{}, Result: step.Result, Unit: step.Unit}
		for _, in := range step.Inputs {
			j.Inputs = append(j.Inputs, inputJSON{in.Symbol, in.Value, in.Unit, in.From, s.line(in.From)})
		}
		f.Working = append(f.Working, j)
	}
	return f
}

func gapTexts(gaps []figure.Gap) []string {
	texts := []string{}
	for _, gap := range gaps {
		texts = append(texts, verdict.Gap(gap).String())
	}
	return texts
}

func rounded(values map[string]float64) map[string]float64 {
	out := make(map[string]float64, len(values))
	for id, v := range values {
		out[id] = quantity.Round(v)
	}
	return out
}
