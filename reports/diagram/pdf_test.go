package diagram_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"codeberg.org/go-pdf/fpdf"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/reports/diagram"
	"driploop/reports/internal/outside"
)

// printed paints a diagram on a page of its own, and returns how many links lead
// away from it.
func printed(t *testing.T, d *diagram.Diagram) (text []byte, to map[string]int) {
	t.Helper()
	doc := fpdf.New("L", "mm", "A3", "")
	doc.SetCatalogSort(true)
	doc.AddPage()
	w, h := d.Size()
	to = map[string]int{}
	link := doc.AddLink()
	doc.SetLink(link, 0, 1)
	d.Paint(diagram.NewPDF(doc, 10, 10, min(400/w, 277/h), diagram.PDFLinks{
		To: func(href string) int {
			to[href]++
			return link
		},
		At: func(string) int { return doc.AddLink() },
	}))
	require.NoError(t, doc.Error())
	var b bytes.Buffer
	require.NoError(t, doc.Output(&b))
	return b.Bytes(), to
}

func TestAPDFHoldsTheSameTexts(t *testing.T) {
	totext := outside.Program(t, "pdftotext", "poppler-utils")
	r := demos(t)["clean/thruster-launch"]
	pdf, to := printed(t, diagram.Lay(r, found(r), diagram.Options{Embedded: true}))
	assert.NotEmpty(t, to)
	path := filepath.Join(t.TempDir(), "diagram.pdf")
	require.NoError(t, os.WriteFile(path, pdf, 0o644))
	text, err := exec.Command(totext, "-raw", path, "-").Output()
	require.NoError(t, err)
	for _, want := range []string{"main-fuse", "isolator", "pos-bus", "2/0 AWG", "8.4 m", "brown", "aft-heavy", "battery-locker", "LEGEND"} {
		assert.Contains(t, string(text), want)
	}
}

func TestAPDFIsSound(t *testing.T) {
	qpdf := outside.Program(t, "qpdf", "qpdf")
	for name, text := range forms() {
		pdf, _ := printed(t, diagram.Lay(decoded(t, name, text), nil, diagram.Options{Returns: true}))
		path := filepath.Join(t.TempDir(), "diagram.pdf")
		require.NoError(t, os.WriteFile(path, pdf, 0o644))
		out, err := exec.Command(qpdf, "--check", path).CombinedOutput()
		assert.NoError(t, err, "%s: %s", name, out)
	}
}
