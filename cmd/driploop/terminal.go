package main

import (
	"io"
	"os"

	"golang.org/x/term"
)

// terminal is what the output goes to.
type terminal struct {
	is    bool
	width int
}

func terminalOf(out io.Writer) terminal {
	file, ok := out.(*os.File)
	if !ok || !term.IsTerminal(int(file.Fd())) {
		return terminal{}
	}
	width, _, err := term.GetSize(int(file.Fd()))
	if err != nil {
		width = 0
	}
	return terminal{is: true, width: width}
}

// colour tells whether to write in colour: on a terminal that can, unless the
// user asked for none (no-color.org).
func (t terminal) colour() bool {
	return t.is && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"
}
