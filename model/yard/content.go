package yard

import (
	"bytes"
	"io"
	"os"
	"regexp"

	"go.yaml.in/yaml/v3"
)

// recordLine begins a record: the key "driploop" at the start of a line.
var recordLine = regexp.MustCompile(`(?m)^(?:\x{feff})?["']?driploop["']?[ \t]*:`)

// word is what every record has somewhere.
var word = []byte("driploop")

// IsRecord tells whether the text of a YAML file found in a folder is a record:
// one whose top level has the key "driploop". A text that cannot be parsed is
// one if a line of it begins with that key.
func IsRecord(text []byte) bool {
	if bytes.Contains(text, word) {
		return recordLine.Match(text) || hasTopLevelKey(text)
	}
	// As UTF-16, which is refused with a clear error later.
	return bytes.IndexByte(text, 0) >= 0 && bytes.Contains(bytes.ReplaceAll(text, []byte{0}, nil), word)
}

func hasTopLevelKey(text []byte) bool {
	var document yaml.Node
	if yaml.Unmarshal(text, &document) != nil || len(document.Content) == 0 {
		return false
	}
	top := document.Content[0]
	if top.Kind != yaml.MappingNode {
		return false
	}
	for i := 0; i < len(top.Content); i += 2 {
		if top.Content[i].Value == "driploop" {
			return true
		}
	}
	return false
}

// BeginsRecord tells whether a file that is too large for a record begins as one
// all the same.
func BeginsRecord(path string) bool {
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, 64<<10))
	return err == nil && recordLine.Match(text)
}
