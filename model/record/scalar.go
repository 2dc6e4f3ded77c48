package record

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"driploop/model/quantity"
	"driploop/model/record/internal/tree"
)

// unknownWord is what stands for any value that nobody knows.
const unknownWord = "unknown"

// noneWord says that there is nothing to name.
const noneWord = "none"

func isUnknown(n *tree.Node) bool { return n.Kind == tree.Scalar && n.Value == unknownWord }

// value reads the value of a key into the target, whose type is that of the
// field in the record.
func (d *decoder) value(s *spec, key, n *tree.Node, in spot, target any) {
	v := n.Aimed()
	if isUnknown(v) {
		d.unknown(s, key, n, in, target)
		return
	}
	if v.IsNull() {
		at := n
		if r := d.src.RangeOf(n); r.Start == r.End {
			at = key // nothing stands there
		}
		d.fault(at, "%q has no value; %s", s.key, s.wanted())
		return
	}
	if s.part != nil {
		s.part.decode(d, s, key, n, in, target)
		return
	}
	switch s.shape {
	case wordsShape, barrelShape, spanShape, pairShape:
		if v.Kind != tree.List {
			d.fault(n, "%q is %s; write a list, such as %s", s.key, noun(v), s.example)
			return
		}
		d.listValue(s, v, n, in, target)
	default:
		if v.Kind != tree.Scalar {
			d.fault(n, "%q is %s; write one value, such as %s", s.key, noun(v), s.example)
			return
		}
		if v.IsTagged() && !coreTag(v.Tag) {
			d.fault(n, "the tag %q means nothing in a record; delete it", clip(v.TagName()))
			return
		}
		d.scalar(s, v, n, target)
	}
}

func coreTag(tag tree.Tag) bool {
	switch tag {
	case tree.Str, tree.Int, tree.Float, tree.Bool, tree.Timestamp:
		return true
	}
	return false
}

// unknown marks a value that nobody knows.
func (d *decoder) unknown(s *spec, key, n *tree.Node, in spot, target any) {
	at := d.extent(n)
	switch {
	case s.certain:
		d.fault(n, "%q has to be known; %s", s.key, s.wanted())
	case s.part != nil:
		s.part.fill(d, in.path, Unknown, at, target)
		if e, ok := target.(entrant); ok {
			*e.entry() = Entry{Path: in.path, At: d.src.RangeOf(key), Body: at.Range()}
		}
	default:
		setUnknown(target, at)
	}
}

func setUnknown(target any, at tree.Extent) {
	switch v := target.(type) {
	case *Text:
		*v = Text{State: Unknown, at: at}
	case *Flag:
		*v = Flag{State: Unknown, at: at}
	case *Count:
		*v = Count{State: Unknown, at: at}
	case *Measure:
		*v = Measure{State: Unknown, at: at}
	case *Wire:
		*v = Wire{State: Unknown, at: at}
	case *Date:
		*v = Date{State: Unknown, at: at}
	case *Words:
		*v = Words{State: Unknown, at: at}
	case *Span:
		*v = Span{State: Unknown, at: at}
	}
}

// wanted says what would be right for a key.
func (s *spec) wanted() string {
	if s.part != nil {
		return "write its parts below it, or leave the key out"
	}
	if s.certain {
		return "write " + s.sample()
	}
	return fmt.Sprintf("write %s, or unknown, or leave the key out", s.sample())
}

// scalar reads one value that is not unknown, and stands at a node.
func (d *decoder) scalar(s *spec, n, at *tree.Node, target any) {
	switch v := target.(type) {
	case *Text:
		if d.textOK(s, n.Value, at) {
			v.V, v.State, v.at = n.Value, Given, d.extent(at)
			d.refer(s.refs, n.Value, v.at)
		}
	case *Flag:
		if n.Tag != tree.Bool || n.Style != 0 {
			d.fault(at, "%q is no flag; write true or false%s", clip(n.Value), boolHint(n))
			return
		}
		v.V, v.State, v.at = strings.EqualFold(n.Value, "true"), Given, d.extent(at)
	case *Count:
		if c, ok := d.countValue(s, n.Value, at); ok {
			v.V, v.State, v.at = c, Given, d.extent(at)
		}
	case *Measure:
		if q := d.quantity(s, n.Value, at); q != nil {
			v.V, v.State, v.at = *q, Given, d.extent(at)
		}
	case *Wire:
		size, err := d.repeats.size(n.Value)
		if err != nil {
			d.fault(at, "%s", err)
			return
		}
		v.V, v.State, v.at = size, Given, d.extent(at)
	case *Date:
		if day, ok := d.day(s, n.Value, at); ok {
			v.V, v.State, v.at = day, Given, d.extent(at)
		}
	case *Terminal:
		d.terminal(s, n.Value, at, v)
	case *int:
		if n.Value != strconv.Itoa(Version) {
			d.fault(at, "%q is no version of the record format that this program reads; write \"driploop: %d\"", clip(n.Value), Version)
			return
		}
		*v = Version
	}
}

// boolHint explains what people write who learned YAML 1.1.
func boolHint(n *tree.Node) string {
	switch strings.ToLower(n.Value) {
	case "true", "false":
		return " without quotation marks"
	case "yes", "no", "on", "off", "y", "n":
		return " (" + n.Value + " is a plain text since YAML 1.2)"
	}
	return ""
}

func (d *decoder) textOK(s *spec, value string, at *tree.Node) bool {
	if contains(s.words, value) {
		return true // one of our own words
	}
	if r, bad := control(value); bad {
		d.fault(at, "%q holds the control character U+%04X; delete it", s.key, r)
		return false
	}
	if strings.TrimSpace(value) == "" {
		d.fault(at, "%q is empty; %s", s.key, s.wanted())
		return false
	}
	if s.words != nil {
		d.fault(at, "%q is no value of %q; %s", clip(value), s.key, choices(value, s.words, "write"))
		return false
	}
	if s.form != nil && !d.repeats.fits(s.form, value) {
		d.fault(at, "%q is no value of %q; %s", clip(value), s.key, s.form.says)
		return false
	}
	return true
}

func contains(words []string, w string) bool {
	for i := range words {
		if len(words[i]) == len(w) && words[i][0] == w[0] && words[i] == w { // most differ at once
			return true
		}
	}
	return false
}

// control returns the first control character of a text, if any. Line breaks
// and tabs are fine: notes have them.
func control(s string) (rune, bool) {
	plain := true
	for i := 0; i < len(s) && plain; i++ {
		plain = s[i] >= ' ' && s[i] < 0x7f
	}
	if plain {
		return 0, false
	}
	for _, r := range s {
		if r < ' ' && r != '\n' && r != '\t' || r >= 0x7f && r < 0xa0 || r == '\u2028' || r == '\u2029' || r == '\ufeff' {
			return r, true
		}
	}
	return 0, false
}

func (d *decoder) countValue(s *spec, value string, at *tree.Node) (int, bool) {
	c, err := strconv.Atoi(value)
	if err != nil || value != strconv.Itoa(c) || c > math.MaxInt32 {
		d.fault(at, "%q is no whole number; write %s", clip(value), s.sample())
		return 0, false
	}
	if c < 0 || c == 0 && !s.zero {
		d.fault(at, "%q cannot be %s; write a number from %d up", s.key, value, least(s.zero))
		return 0, false
	}
	return c, true
}

func least(zero bool) int {
	if zero {
		return 0
	}
	return 1
}

// quantity reads a quantity; nil if it is not right.
func (d *decoder) quantity(s *spec, value string, at *tree.Node) *quantity.Quantity {
	q, err := d.repeats.quantity(value, s.dim)
	if err != nil {
		var parse *quantity.ParseError
		if errors.As(err, &parse) {
			d.fault(at, "%s", clipSays(parse.Says))
		}
		return nil
	}
	signed := s.signed || s.dim == quantity.Temperature
	switch {
	case q.Base < 0 && !signed:
		d.fault(at, "%q cannot be negative, and here stands %s", s.key, q)
	case q.Base == 0 && !signed && !s.zero:
		d.fault(at, "%q cannot be zero; write what it is, or unknown", s.key)
	default:
		return q
	}
	return nil
}

// clipSays bounds a message that quotes what was written.
func clipSays(says string) string {
	const most = 400
	if r := []rune(says); len(r) > most {
		return string(r[:most]) + "…"
	}
	return says
}

func (d *decoder) day(s *spec, value string, at *tree.Node) (time.Time, bool) {
	day, err := time.Parse(time.DateOnly, value)
	var parse *time.ParseError
	if errors.As(err, &parse) && strings.Contains(parse.Message, "out of range") {
		d.fault(at, "%q is no day of the calendar; write year-month-day, such as %s", clip(value), s.example)
		return day, false
	}
	if err != nil || day.Year() < 1800 {
		d.fault(at, "%q is no date; write year-month-day, such as %s", clip(value), s.example)
		return day, false
	}
	return day, true
}

// terminal reads component.terminal.
func (d *decoder) terminal(s *spec, value string, at *tree.Node, v *Terminal) {
	component, name, ok := strings.Cut(value, ".")
	if !ok || !plainID(component) || !plainID(name) {
		d.fault(at, "%q is no terminal; write component.terminal, such as %s", clip(value), s.example)
		return
	}
	*v = Terminal{Component: component, Name: name, At: d.src.RangeOf(at)}
}
