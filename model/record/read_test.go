package record

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// disturbed is a file with which something is done before its first byte is read.
type disturbed struct {
	*os.File
	do func()
}

func (d *disturbed) Read(p []byte) (int, error) {
	if d.do != nil {
		d.do()
		d.do = nil
	}
	return d.File.Read(p)
}

func TestAFileThatChangesWhileItIsReadIsRefused(t *testing.T) {
	const whole = "driploop: 1\njob: {number: X}\n"
	for name, c := range map[string]struct {
		do   func(path string) error
		want error
	}{
		"nothing":          {func(string) error { return nil }, nil},
		"cut short":        {func(path string) error { return os.Truncate(path, 12) }, ErrChanged},
		"longer":           {func(path string) error { return os.WriteFile(path, []byte(whole+"# more\n"), 0o600) }, ErrChanged},
		"same length":      {func(path string) error { return os.Chtimes(path, time.Time{}, time.Now().Add(time.Second)) }, ErrChanged},
		"taken away":       {os.Remove, nil}, // what was opened is still whole
		"another in place": {func(path string) error { return os.Rename(path+".new", path) }, nil},
	} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "r.yaml")
			require.NoError(t, os.WriteFile(path, []byte(whole), 0o600))
			require.NoError(t, os.WriteFile(path+".new", []byte("driploop: 1\n"), 0o600))
			file, err := os.Open(path)
			require.NoError(t, err)
			defer file.Close()
			text, err := readWhole(path, &disturbed{file, func() { require.NoError(t, c.do(path)) }})
			require.ErrorIs(t, err, c.want)
			if c.want == nil {
				assert.Equal(t, whole, string(text))
			}
		})
	}
}
