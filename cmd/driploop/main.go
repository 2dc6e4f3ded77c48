// Command driploop judges the installation records of direct-current equipment
// on small craft by rules that each cite a published source.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"
	"time"
)

func main() {
	// With the signal caught, writing to a closed pipe is an error like any
	// other and is reported, where it would end the program without a word.
	signal.Notify(make(chan os.Signal, 1), syscall.SIGPIPE)
	collectLessOften()
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// collectLessOften trades memory for time: compiling the rules and judging make
// much garbage that is not worth collecting, up to a limit. The environment goes
// before it.
func collectLessOften() {
	const percent, softLimit = 400, 512 << 20
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(percent)
	}
	limitMemory(softLimit)
}

// stayFlat has a run over many records stay below 150 MB, the program itself
// included, where that of one may take what makes it fast.
func stayFlat() {
	const flatLimit = 104 << 20
	limitMemory(flatLimit)
}

func limitMemory(bytes int64) {
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(bytes)
	}
}

// run carries out one command line and returns the exit code.
func run(args []string, in io.Reader, out, errs io.Writer) int {
	return guard(errs, func() int {
		s := &session{in: in, out: &output{w: out}, errs: errs, terminal: terminalOf(out), engine: compiled(), patience: patience}
		return s.run(args)
	})
}

// guard turns a panic into a message for people and the code of a fault.
func guard(errs io.Writer, work func() int) (code int) {
	defer func() {
		if value := recover(); value != nil {
			caught(value).report(errs)
			code = exitFault
		}
	}()
	return work()
}

func (s *session) run(args []string) int {
	root := newRoot(s)
	root.SetArgs(args)
	root.SetIn(s.in)
	root.SetOut(s.out)
	root.SetErr(s.errs)
	err := root.Execute()
	if s.out.err != nil {
		err = fmt.Errorf("cannot write the output: %w", s.out.err)
	}
	var fault *programFault
	switch {
	case errors.As(err, &fault):
		complain(s.errs, err.Error())
		fmt.Fprintln(s.errs, pleaseReport)
		return exitFault
	case err != nil:
		complain(s.errs, err.Error())
		return max(s.code, exitUnusable)
	}
	return s.code
}

// session is what the commands of one run share.
type session struct {
	in       io.Reader
	out      *output
	errs     io.Writer
	terminal terminal
	patience time.Duration // before progress is shown
	engine   engine
	code     int
}

// output remembers the first error of the writer, so that a full disk or a
// closed pipe is reported whoever wrote.
type output struct {
	w   io.Writer
	err error
}

func (o *output) Write(p []byte) (int, error) {
	if o.err != nil {
		return 0, o.err
	}
	n, err := o.w.Write(p)
	o.err = err
	return n, err
}
