package main

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// manyLamps is a record of n conductors: a bus with a fuse, two conductors and a
// lamp on each branch.
func manyLamps(n int) string {
	var b, c strings.Builder
	b.WriteString("driploop: 1\njob: {number: HL-400}\nvessel: {system: 12 V, earthing: negative-ground}\nspaces:\n  cabin: {kind: accommodation, ambient: 30 degC}\n" +
		"components:\n  house: {kind: battery, chemistry: agm, space: cabin}\n  main: {kind: fuse, rating: 200 A, space: cabin}\n" +
		"  pos: {kind: busbar, space: cabin}\n  neg: {kind: busbar, space: cabin}\n")
	c.WriteString("conductors:\n  M1: {from: house.pos, to: main.line, role: positive, size: 2/0 AWG, length: 6 in}\n" +
		"  M2: {from: main.load, to: pos.m, role: positive, size: 2/0 AWG, length: 2 ft}\n  M3: {from: neg.m, to: house.neg, role: negative, size: 2/0 AWG, length: 2 ft}\n")
	const rest = "insulation: 105 degC, colour: red, route: [{space: cabin, length: 10 ft, in: open, support: 400 mm}], " +
		"ends: {from: {terminal: ring, hole: M5, stud: M5, torque: 2 N.m}, to: {terminal: ring, hole: M5, stud: M5, torque: 2 N.m}}}\n"
	for i := range (n - 3) / 3 {
		fmt.Fprintf(&b, "  f%d: {kind: fuse, rating: 10 A, voltage: 32 V, space: cabin}\n  l%d: {kind: lamp, current: 2 A, purpose: cabin-light, space: cabin}\n", i, i)
		fmt.Fprintf(&c, "  A%d: {from: pos.a%d, to: f%d.line, role: positive, size: 14 AWG, length: 1 ft, %s", i, i, i, rest)
		fmt.Fprintf(&c, "  B%d: {from: f%d.load, to: l%d.pos, role: positive, size: 14 AWG, length: 10 ft, %s", i, i, i, rest)
		fmt.Fprintf(&c, "  C%d: {from: l%d.neg, to: neg.c%d, role: negative, size: 14 AWG, length: 11 ft, %s", i, i, i, rest)
	}
	return b.String() + c.String()
}

// keystroke types one character at the end of the record's last line and asks what
// could stand there. It returns how long the answer took.
func (c *client) keystroke(text string, version int) time.Duration {
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	last := len(lines) - 1
	at := map[string]int{"line": last, "character": strings.Index(lines[last], "colour: ") + len("colour: ")}
	begun := time.Now()
	require.NoError(c.t, c.conn.Notify(context.Background(), "textDocument/didChange", map[string]any{
		"textDocument":   map[string]any{"uri": uri, "version": version},
		"contentChanges": []any{map[string]any{"range": map[string]any{"start": at, "end": at}, "text": "b"}},
	}))
	at["character"]++
	var items []struct{ Label string }
	c.call("textDocument/completion", map[string]any{"textDocument": map[string]any{"uri": uri}, "position": at}, &items)
	took := time.Since(begun)
	var labels []string
	for _, i := range items {
		labels = append(labels, i.Label)
	}
	assert.Contains(c.t, labels, "blue")
	return took
}

// TestAKeystrokeIsAnsweredBeforeTheRecordIsJudged: what could stand at the cursor
// is told from the text before, while the new one is still being judged.
func TestAKeystrokeIsAnsweredBeforeTheRecordIsJudged(t *testing.T) {
	c, text := newClient(t), manyLamps(90)
	d := c.show(1, text)
	require.NotEmpty(t, d.Diagnostics)
	for i := range 5 {
		c.keystroke(text, i+2)
	}
	for {
		select {
		case d := <-c.published:
			if d.Version == 6 {
				assert.NotEmpty(t, d.Diagnostics, "the newest text is judged in the end")
				return
			}
		case <-time.After(30 * time.Second):
			require.Fail(t, "the newest text was never judged")
		}
	}
}

// BenchmarkKeystroke is the time from a character typed in a record of 400
// conductors to the list of what could stand there.
func BenchmarkKeystroke(b *testing.B) {
	c, text := newClient(b), manyLamps(400)
	c.show(1, text)
	var all []time.Duration
	for i := range b.N {
		all = append(all, c.keystroke(text, i+2))
		time.Sleep(100 * time.Millisecond) // ten characters a second
	}
	slices.Sort(all)
	b.ReportMetric(float64(all[len(all)/2].Microseconds())/1000, "median-ms")
	b.ReportMetric(float64(all[len(all)-1].Microseconds())/1000, "worst-ms")
}

// BenchmarkJudgedKeystroke is the time from a digit typed in a record of 400
// conductors to what is wrong with it, all of it judged anew.
func BenchmarkJudgedKeystroke(b *testing.B) {
	c, text := newClient(b), manyLamps(400)
	c.show(1, text)
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	last := len(lines) - 1
	from := strings.Index(lines[last], "length: 11 ft") + len("length: ")
	var all []time.Duration
	for i := range b.N {
		start := map[string]int{"line": last, "character": from}
		end := map[string]int{"line": last, "character": from + 1}
		begun := time.Now()
		require.NoError(b, c.conn.Notify(context.Background(), "textDocument/didChange", map[string]any{
			"textDocument":   map[string]any{"uri": uri, "version": i + 2},
			"contentChanges": []any{map[string]any{"range": map[string]any{"start": start, "end": end}, "text": fmt.Sprint(1 + i%2)}},
		}))
		for d := range c.published {
			if d.Version == i+2 {
				break
			}
		}
		all = append(all, time.Since(begun))
	}
	slices.Sort(all)
	b.ReportMetric(float64(all[len(all)/2].Microseconds())/1000, "median-ms")
	b.ReportMetric(float64(all[len(all)-1].Microseconds())/1000, "worst-ms")
}
