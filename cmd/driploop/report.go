package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"slices"
	"strings"
	"syscall"

	"github.com/spf13/cobra"

	"driploop/model/quantity"
	"driploop/model/verdict"
	"driploop/model/yard"
	"driploop/reports"
	"driploop/reports/html"
	"driploop/reports/pdf"
	"driploop/reports/survey"
)

const reportLong = `Write a survey report of a record: the verdict, what to fix first, each finding
with its place, figures, working, source and remedy, the questions that are
open, the diagram, the schedule of circuits, what was judged by which documents
and what no record can show.

An HTML report is one file that needs no network; it prints. A PDF report has
the same content. Of several records, or of a folder of them, each gets a report
of its own in the folder that -o names, and index.html lists them, the worst
first.

With --join the files are the parts of one run, as check --part I/N --format json
writes them: the page lists every record of the whole, the worst first, with what
was found and what is open.

The same record, rules and version give the same bytes; only --at prints a time.
A report of a faulty record is no failure: the exit code is 0. It is 2 where a
record could not be used.

`

type reportFlags struct {
	format choice
	units  choice
	at     moment
	output destination
	check  checkFlags
	join   bool
}

func newReport(s *session) *cobra.Command {
	f := &reportFlags{format: choice{words: []string{"html", "pdf"}}, units: choice{words: quantity.Systems()}}
	cmd := &cobra.Command{
		Use:   "report RECORD...",
		Short: "Write a survey report, HTML or PDF",
		Long:  reportLong,
		Example: `  driploop report job.yaml -o job.html
  driploop report job.yaml -o job.pdf --units metric
  driploop report records/ -o survey/
  driploop report --join part-*.json -o index.html`,
		Args: atLeastOne("name a record, or a folder of them"),
		RunE: func(cmd *cobra.Command, args []string) error { return s.report(cmd, args, f) },
	}
	flags := cmd.Flags()
	flags.Var(&f.format, "format", "html or pdf (default: by the ending of -o, else html)")
	flags.Var(&f.units, "units", unitsHelp("both"))
	f.at.addTo(flags)
	flags.BoolVar(&f.join, "join", false, "list the records of a run that was judged in parts, from the JSON file of each part, the worst first")
	flags.StringVarP((*string)(&f.output), "output", "o", "", "the file to write, or the folder for several reports (default, or -: standard output)")
	flags.StringVar(&f.check.today, "today", "", "the day by which waivers run out, as 2006-01-02 (default: today)")
	flags.StringVar(&f.check.config, "config", "", `the settings of the yard (default: driploop.yaml above RECORD; "none" for none)`)
	return cmd
}

func (s *session) report(cmd *cobra.Command, args []string, f *reportFlags) error {
	if f.join {
		return s.reportParts(cmd, args, f)
	}
	today, err := dayOf(f.check.today)
	if err != nil {
		return err
	}
	settings, err := s.settle(cmd, args, &f.check)
	if err != nil {
		return err
	}
	if f.units.value == "" {
		f.units.value = settings.Units.V
	}
	if f.format.value == "" {
		f.format.value = "html"
		if strings.EqualFold(filepath.Ext(string(f.output)), ".pdf") {
			f.format.value = "pdf"
		}
	}
	s.takeRules(settings)
	found := yard.Find(args, settings)
	r := &reporting{
		checking: &checking{session: s, flags: &f.check, settings: settings, today: today, found: found, whole: true, code: exitClean},
		report:   f, folder: isFolder(string(f.output)), names: map[string]int{},
	}
	if several := len(args) > 1 || len(found.Folders) > 0; several && !r.folder {
		if !f.output.isFile() {
			return errors.New("several records make several files; name a folder for them with -o")
		}
		if info, err := os.Stat(string(f.output)); err == nil && !info.IsDir() {
			return fmt.Errorf("%s is a file; several records make several files, so name a folder with -o", f.output)
		}
		r.folder = true
	}
	if f.format.value == "pdf" && !f.output.isFile() && s.terminal.is {
		return errors.New("a PDF is nothing to read in a terminal; name a file with -o")
	}
	ctx, release := signal.NotifyContext(cmd.Context(), os.Interrupt, syscall.SIGTERM)
	defer release()
	return r.run(ctx)
}

// isFolder tells whether a path means a folder: one that is there, or that ends
// as only folders do.
func isFolder(path string) bool {
	if path == "" || path == standardOutput {
		return false
	}
	info, err := os.Stat(path)
	return err == nil && info.IsDir() || os.IsPathSeparator(path[len(path)-1])
}

// reporting is one run of report.
type reporting struct {
	*checking
	report  *reportFlags
	folder  bool           // several reports go to a folder
	names   map[string]int // of the files in it, by how often they were asked for
	entries []html.Entry
	rules   survey.Practice
}

func (r *reporting) run(ctx context.Context) error {
	e, err := r.engine()
	if err != nil {
		return err
	}
	if r.practice, err = practiceOf(e, r.settings); err != nil {
		return err
	}
	r.rules = survey.Practice{Digest: e.Digest(), Rules: e.Rules(), Documents: e.Sources()}
	for _, set := range e.Sets() {
		r.rules.Sets = append(r.rules.Sets, survey.Set{ID: set.ID, Title: set.Title, About: reports.Flow(set.Description)})
	}
	r.sources, r.holding = map[string]*reports.Source{}, map[string]bool{}
	if r.folder {
		if err := os.MkdirAll(string(r.report.output), 0o777); err != nil {
			return fmt.Errorf("cannot make the folder %s: %w", r.report.output, pathless(err))
		}
	}
	if err := inOrder(ctx, slices.Values(r.found.Files), r.judge, r.take); err != nil {
		if errors.Is(err, context.Canceled) {
			r.session.code = exitInterrupted
			complain(r.errs, fmt.Sprintf("stopped before the end: %d of %d files reported on; the index is left as it was", r.judged, len(r.found.Files)))
			return nil
		}
		return err
	}
	r.faults = append(append(r.found.Faults, r.found.Empty(r.holding)...), r.faults...)
	if r.folder {
		if err := r.index(); err != nil {
			return err
		}
	}
	if len(r.faults) == 0 {
		return nil
	}
	r.session.code = max(r.session.code, exitUnusable)
	return reports.Text(r.errs, &verdict.Run{Faults: r.faults}, reports.Options{Sources: r.sources})
}

// take writes the report of one record.
func (r *reporting) take(f yard.File, got result) error {
	if got.stray {
		return nil
	}
	r.found.Hold(r.holding, f.Path)
	if got.broken != nil {
		got.broken.report(r.errs)
		r.session.code = exitFault
	}
	if got.runaway != nil {
		return got.runaway
	}
	if len(got.faults) > 0 {
		r.faults = append(r.faults, got.faults...)
		r.sources[f.Path] = got.source
	}
	if !got.judged {
		return nil
	}
	r.judged++
	one := practice{settings: r.settings, lowered: lowered(&got.verdicts)}
	s := survey.Build(survey.Input{
		Record: got.solved.record, Analysis: got.solved.analysis, Judged: &got.verdicts, Source: got.source, Practice: r.rules,
		Version: version(), At: r.report.at.Time, Units: quantity.System(r.report.units.value), Notes: one.notes(),
	})
	to := r.report.output
	if r.folder {
		name := r.name(f.Path)
		to = destination(filepath.Join(string(r.report.output), name))
		r.entries = append(r.entries, html.EntryOf(name, &got.verdicts, s))
	}
	return r.to(to, func(w io.Writer) error {
		if r.report.format.value == "pdf" {
			return pdf.Write(w, s, r.report.at.Time)
		}
		return html.Write(w, s)
	})
}

// index lists the reports that were written.
func (r *reporting) index() error {
	return r.to(destination(filepath.Join(string(r.report.output), "index.html")), func(w io.Writer) error {
		return html.WriteIndex(w, html.Index{
			Entries: r.entries, Faults: r.faults, Rules: r.rules.Digest, Version: version(), At: r.report.at.Time,
		})
	})
}

// longestName is that of the file of a report, without its ending.
const longestName = 80

// name is that of the file for the report of a record: of plain letters, and like
// no other, not even where case does not tell files apart.
func (r *reporting) name(path string) string {
	base := filepath.Base(path)
	base = strings.TrimSuffix(base, filepath.Ext(base))
	base = strings.Map(func(c rune) rune {
		switch {
		case c >= 'a' && c <= 'z', c >= '0' && c <= '9', c == '-', c == '_', c == '.':
			return c
		case c >= 'A' && c <= 'Z':
			return c + 'a' - 'A'
		}
		return '-'
	}, base)
	base = strings.Trim(base[:min(len(base), longestName)], "-.")
	if base == "" || base == "index" {
		base = "record"
	}
	name := base
	for r.names[name] > 0 {
		r.names[base]++
		name = fmt.Sprintf("%s-%d", base, r.names[base])
	}
	r.names[name]++
	return name + "." + r.report.format.value
}
