package reports

import (
	"bytes"
	"encoding/xml"
	"strconv"
	"strings"
)

// text renders a suite as it stands in the run, on a line of its own.
func (s *junitSuite) text() ([]byte, error) {
	head, closing := *s, "\n  </testsuite>"
	head.Cases = nil
	text, err := xml.MarshalIndent(&head, "  ", "  ")
	if err != nil {
		return nil, err
	}
	const usual = 160 // bytes of a case
	out := bytes.NewBuffer(make([]byte, 0, len(text)+usual*len(s.Cases)))
	out.WriteByte('\n')
	out.Write(bytes.TrimSuffix(text, []byte(closing)))
	for i := range s.Cases {
		if err := s.Cases[i].write(out); err != nil {
			return nil, err
		}
	}
	out.WriteString(closing)
	return out.Bytes(), nil
}

// write writes a case as encoding/xml does. Most of them passed: those, which have
// attributes alone, are written without going through its reflection.
func (c *junitCase) write(out *bytes.Buffer) error {
	if c.Failure != nil || c.Error != nil || c.Skipped != nil || c.Out != "" {
		out.WriteByte('\n')
		e := xml.NewEncoder(out)
		e.Indent("    ", "  ")
		return e.EncodeElement(c, xml.StartElement{Name: xml.Name{Local: "testcase"}})
	}
	out.WriteString("\n    <testcase")
	attribute(out, "name", c.Name)
	attribute(out, "classname", c.Class)
	attribute(out, "file", c.File)
	if c.Line != 0 {
		attribute(out, "line", strconv.Itoa(c.Line))
	}
	out.WriteString("></testcase>")
	return nil
}

func attribute(out *bytes.Buffer, name, value string) {
	out.WriteByte(' ')
	out.WriteString(name)
	out.WriteString(`="`)
	if _, plain := columns(value); plain && !strings.ContainsAny(value, `<>&'"`) {
		out.WriteString(value)
	} else {
		_ = xml.EscapeText(out, []byte(value)) // a buffer does not fail
	}
	out.WriteByte('"')
}
