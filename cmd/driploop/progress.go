package main

import (
	"io"
	"time"

	"github.com/schollz/progressbar/v3"
)

// patience is how long a person waits before being shown how far a command is.
const patience = 400 * time.Millisecond

// progress shows on a terminal how far a long command is: files done, rate, and
// time left. The nil progress shows nothing.
type progress struct{ bar *progressbar.ProgressBar }

// newProgress shows how many of some files are done, once that has taken a while.
func newProgress(w io.Writer, files int, after time.Duration) *progress {
	return &progress{progressbar.NewOptions(files,
		progressbar.OptionSetWriter(&late{w: w, from: time.Now().Add(after)}),
		progressbar.OptionSetDescription("judging"),
		progressbar.OptionSetItsString("files"),
		progressbar.OptionShowIts(),
		progressbar.OptionShowCount(),
		progressbar.OptionSetPredictTime(true),
		progressbar.OptionSetWidth(progressWidth),
		progressbar.OptionSetTheme(progressbar.ThemeASCII),
		progressbar.OptionThrottle(progressEvery),
		progressbar.OptionSetRenderBlankState(false),
		progressbar.OptionClearOnFinish(),
	)}
}

const (
	progressWidth = 20 // columns of the bar itself
	progressEvery = 100 * time.Millisecond
)

// add counts one more file.
func (p *progress) add() {
	if p != nil {
		_ = p.bar.Add(1) // what is shown beside the work must not stop it
	}
}

// end takes the bar from the screen.
func (p *progress) end() {
	if p != nil {
		_ = p.bar.Clear()
	}
}

// late drops what is written too early to be of use.
type late struct {
	w    io.Writer
	from time.Time
}

func (l *late) Write(p []byte) (int, error) {
	if time.Now().Before(l.from) {
		return len(p), nil
	}
	return l.w.Write(p)
}

// progressOf shows the progress of a check on standard error, if that is a
// terminal and verdicts do not run over the same screen.
func (c *checking) progressOf() *progress {
	files := len(c.found.Files)
	streamed := c.terminal.is && !c.flags.output.isFile()
	if files < 2 || streamed || !terminalOf(c.errs).is {
		return nil
	}
	return newProgress(c.errs, files, c.patience)
}
