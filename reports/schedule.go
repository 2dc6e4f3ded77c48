package reports

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/verdict"
)

// ScheduleOptions are the choices of whoever reads a schedule of circuits.
type ScheduleOptions struct {
	Options
	Working bool // show how each figure was got
	// Subjects, by id or path in the record, limits what is shown to the working of
	// these; none stands for the whole schedule.
	Subjects []string
}

// Schedule writes the computed schedule of circuits of a record: each load with
// its way out and back, then conductors, devices, sources and operating cases,
// and what is missing for the figures that stay open.
func Schedule(w io.Writer, r *record.Record, a *circuit.Analysis, o ScheduleOptions) error {
	s := newSchedule(w, r, a, o.Options)
	if len(o.Subjects) > 0 {
		return s.only(o.Subjects)
	}
	s.head()
	s.problems()
	s.loads()
	for _, h := range s.sheets() {
		s.heading(strings.ToUpper(h.title), h.about)
		s.table(h.rows, 0)
	}
	s.open()
	if o.Working {
		s.working(s.shown)
	} else {
		s.blank()
		s.hang(0, 0, txt("How each figure was got: the same command with --working."))
	}
	s.blank()
	s.hang(0, 0, txt(Caution))
	return s.close()
}

func newSchedule(w io.Writer, r *record.Record, a *circuit.Analysis, o Options) *schedule {
	if o.Units == "" {
		o.Units = quantity.Both
	}
	return &schedule{page: newPage(w, o), rec: r, a: a, units: o.Units, src: o.Sources[r.Name]}
}

type schedule struct {
	*page
	rec   *record.Record
	a     *circuit.Analysis
	units quantity.System
	src   *Source
	// shown collects every figure in the order it is shown, for the working and
	// for what is open.
	shown []named
}

// named is a figure of a part of the installation.
type named struct {
	subject string // path in the record
	name    string
	fig     figure.Figure
}

func (s *schedule) head() {
	s.entry(in(faint, "record"), in(strong, s.rec.Name))
	job := enumerateNonEmpty(s.rec.Job.Number.V, s.rec.Job.Title.V)
	if job != "" {
		s.entry(in(faint, "job"), txt(job))
	}
	vessel := s.rec.Vessel.Name.V
	if system, ok := s.rec.Vessel.System.Get(); ok {
		vessel = enumerateNonEmpty(vessel, "system of "+system.Format(s.units))
	}
	if vessel != "" {
		s.entry(in(faint, "vessel"), txt(vessel))
	}
}

// problems writes what left a part of the network unsolved.
func (s *schedule) problems() {
	if len(s.a.Problems) == 0 {
		return
	}
	s.heading("WHAT COULD NOT BE SOLVED", "figures that depend on it stay open")
	for _, problem := range s.a.Problems {
		s.hang(0, 2, in(strong, fmt.Sprintf("%s:%d:%d", s.rec.Name, problem.At.Start.Line, problem.At.Start.Column)), txt(", "+problem.Path+": "+problem.Says))
		s.excerpt(s.src, problem.At, warningInk)
	}
}

// value shows a figure and keeps it for the working.
func (s *schedule) value(subject, name string, f figure.Figure) string {
	s.shown = append(s.shown, named{subject, name, f})
	return s.print(f)
}

const openCell = "open"

func (s *schedule) print(f figure.Figure) string {
	if !f.Known {
		return openCell
	}
	return strings.ReplaceAll(inUnit(f.Value, f.Unit).Format(s.units), " ", string(glue))
}

// inUnit makes a quantity of a figure; without a unit, a bare number.
func inUnit(value float64, unit string) quantity.Quantity {
	if _, known := quantity.DimensionOf(unit); known && unit != "" {
		return quantity.New(value, unit)
	}
	return quantity.Quantity{Value: value, Base: value}
}

// share gives a part as a percentage of a whole.
func share(part, whole figure.Figure) string {
	if !part.Known || !whole.Known || whole.Value == 0 {
		return ""
	}
	return " (" + quantity.New(100*part.Value/whole.Value, "%").Format(quantity.Metric) + ")"
}

// measure shows a value of the record.
func (s *schedule) measure(m record.Measure) string {
	if q, ok := m.Get(); ok {
		return strings.ReplaceAll(q.Format(s.units), " ", string(glue))
	}
	return openCell
}

// working writes how each figure was got.
func (s *schedule) working(figures []named) {
	s.heading("WORKING", plural(len(figures), "figure"))
	subject := ""
	for _, n := range figures {
		if n.subject != subject {
			if subject != "" {
				s.blank()
			}
			subject = n.subject
			s.hang(0, 0, in(strong, subject))
		}
		s.steps(n)
	}
}

func (s *schedule) steps(n named) {
	s.hang(2, 4, txt(n.name+" = "), in(strong, s.print(n.fig)))
	for _, gap := range n.fig.Gaps {
		s.hang(6, 8, txt("missing: "+verdict.Gap(gap).String()))
	}
	for _, step := range n.fig.Working() {
		s.hang(6, 8, txt(step.Formula), in(faint, " ["+step.Source+"]"))
		for _, input := range step.Inputs {
			s.hang(8, 10, txt(input.Symbol+" = "+exact(input.Value, input.Unit)), in(faint, " from "+input.From+s.where(input.From)))
		}
		s.hang(8, 10, txt("gives "+exact(step.Result, step.Unit)))
	}
}

// only writes the working of some subjects.
func (s *schedule) only(subjects []string) error {
	whole := newSchedule(io.Discard, s.rec, s.a, Options{Units: s.units})
	whole.loads()
	whole.sheets()
	s.head()
	s.working(whole.of(subjects))
	s.blank()
	s.hang(0, 0, txt(Caution))
	return s.close()
}

// of returns the figures shown of some subjects, of all if none is named.
func (s *schedule) of(subjects []string) []named {
	if len(subjects) == 0 {
		return s.shown
	}
	var some []named
	for _, n := range s.shown {
		_, id, _ := strings.Cut(n.subject, ".")
		if slices.Contains(subjects, n.subject) || slices.Contains(subjects, id) {
			some = append(some, n)
		}
	}
	return some
}

// Subjects lists, by id, the parts of a record that a schedule has figures of.
func Subjects(r *record.Record, a *circuit.Analysis) []string {
	var ids []string
	for _, c := range r.Components {
		if a.Loads[c.ID] != nil || a.Devices[c.ID] != nil || a.Batteries[c.ID] != nil {
			ids = append(ids, c.ID)
		}
	}
	for _, c := range r.Conductors {
		ids = append(ids, c.ID)
	}
	return ids
}

// line returns the line of the file at which an entry of the record stands, 0 for
// what is none.
func (s *schedule) line(path string) int {
	path, _, _ = strings.Cut(path, ", ")
	return s.rec.Places.At(path).Start.Line
}

// where names the line of an entry.
func (s *schedule) where(path string) string {
	if line := s.line(path); line > 0 {
		return fmt.Sprintf(" (line %d)", line)
	}
	return ""
}

// exact prints a number of a working with the digits that it takes to check it.
func exact(value float64, unit string) string {
	number := strconv.FormatFloat(value, 'g', 6, 64)
	if rounded, err := strconv.ParseFloat(number, 64); err == nil && (rounded >= 1e-4 && rounded < 1e9 || rounded == 0) {
		number = strconv.FormatFloat(rounded, 'f', -1, 64)
	}
	if unit == "" {
		return number
	}
	return number + string(glue) + quantity.Symbol(unit)
}

// open lists the entries that figures wait for.
func (s *schedule) open() {
	waits := s.openFigures()
	if len(waits) == 0 {
		return
	}
	s.heading("OPEN FIGURES", strconv.Itoa(len(waits)))
	s.todo(s.src, waits)
}

// openFigures are the figures shown that are not known.
func (s *schedule) openFigures() []wait {
	var waits []wait
	for _, n := range s.shown {
		if n.fig.Known {
			continue
		}
		w := wait{what: n.name, subject: n.subject}
		for _, gap := range n.fig.Gaps {
			w.missing = append(w.missing, verdict.Gap(gap))
		}
		waits = append(waits, w)
	}
	return waits
}

func enumerateNonEmpty(words ...string) string {
	var some []string
	for _, w := range words {
		if w != "" {
			some = append(some, w)
		}
	}
	return strings.Join(some, ", ")
}
