package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime"
	"runtime/debug"
	"strings"

	"driploop/reports"
)

// programFault is an error that no record and no user can have caused.
type programFault struct{ err error }

func (f *programFault) Error() string { return "a fault of the program: " + f.err.Error() }
func (f *programFault) Unwrap() error { return f.err }

// panicked is a fault of the program: a panic and where it was raised.
type panicked struct {
	value any
	at    string
	stack []byte
}

// caught describes what recover returned. It is called from the deferred
// function itself, while the stack still stands.
func caught(value any) panicked {
	return panicked{value: value, at: panicPlace(), stack: debug.Stack()}
}

// String says what happened and where, on one line.
func (p panicked) String() string {
	var fault *programFault
	if err, ok := p.value.(error); ok && errors.As(err, &fault) {
		return fault.Error()
	}
	return fmt.Sprintf("a fault of the program at %s: %v", p.at, p.value)
}

const pleaseReport = "Please report this, with the output of driploop --version; DRIPLOOP_DEBUG=1 shows the stack."

// report tells a user of it, without a stack unless DRIPLOOP_DEBUG asks for it.
func (p panicked) report(errs io.Writer) {
	complain(errs, p.String())
	fmt.Fprintln(errs, pleaseReport)
	if os.Getenv("DRIPLOOP_DEBUG") != "" {
		_, _ = errs.Write(p.stack)
	}
}

// complain writes a message, which may be of several lines, safe for a terminal.
func complain(errs io.Writer, message string) {
	for i, line := range strings.Split(message, "\n") {
		prefix := "driploop: "
		if i > 0 {
			prefix = "  "
		}
		fmt.Fprintln(errs, prefix+reports.Plain(line))
	}
}

// panicPlace finds the file and line of our code that panicked.
func panicPlace() string {
	pcs := make([]uintptr, 64)
	frames := runtime.CallersFrames(pcs[:runtime.Callers(2, pcs)])
	raised := false
	for {
		frame, more := frames.Next()
		switch {
		case strings.HasPrefix(frame.Function, "runtime.gopanic"):
			raised = true
		case raised && isOurs(frame.Function):
			return fmt.Sprintf("%s:%d", shortFile(frame.File), frame.Line)
		}
		if !more {
			return "an unknown place"
		}
	}
}

func isOurs(function string) bool {
	return strings.HasPrefix(function, "driploop/") || strings.HasPrefix(function, "main.")
}

// shortFile is the path of a file from the root of the module on.
func shortFile(path string) string {
	for _, room := range []string{"/cmd/", "/model/", "/rules/", "/reports/"} {
		if i := strings.LastIndex(path, room); i >= 0 {
			return path[i+1:]
		}
	}
	return path
}
