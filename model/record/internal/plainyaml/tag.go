package plainyaml

import (
	"strings"

	"go.yaml.in/yaml/v3"

	"driploop/model/record/internal/tree"
)

// tagOf returns the tag that yaml.v3 gives to a text without quotation marks.
// Texts of the forms that records are full of are told here; all others, which
// might be a number or a date in one of many spellings, yaml.v3 is asked.
func tagOf(value string) tree.Tag {
	if value == "" {
		return tree.Null
	}
	switch c := value[0]; {
	case c >= '0' && c <= '9':
		if isCount(value) {
			return tree.Int
		}
		if isQuantity(value) {
			return tree.Str
		}
		if isDate(value) {
			return tree.Timestamp
		}
	case c == '+', c == '-', c == '.':
		if isQuantity(value) {
			return tree.Str
		}
	case c == '<':
		if value == "<<" {
			return tree.Merge
		}
		return tree.Str
	case len(value) > len("false"):
		return tree.Str // longer than any word of YAML
	default:
		return tagOfWord(value)
	}
	return tree.TagOf((&yaml.Node{Kind: yaml.ScalarNode, Value: value}).ShortTag())
}

// tagOfWord returns the tag of a text that begins with a letter or the like.
func tagOfWord(value string) tree.Tag {
	switch value {
	case "true", "True", "TRUE", "false", "False", "FALSE":
		return tree.Bool
	case "null", "Null", "NULL", "~":
		return tree.Null
	}
	return tree.Str
}

// isCount reports whether a text is a whole number in the plainest form.
func isCount(value string) bool {
	if value[0] == '0' || len(value) > 18 {
		return value == "0"
	}
	for i := 1; i < len(value); i++ {
		if value[i] < '0' || value[i] > '9' {
			return false
		}
	}
	return true
}

// isDate reports whether a text is a date in the plainest form, of a day that every
// month has.
func isDate(value string) bool {
	if len(value) != len("2006-01-02") || value[4] != '-' || value[7] != '-' {
		return false
	}
	for i := range len(value) {
		if i != 4 && i != 7 && (value[i] < '0' || value[i] > '9') {
			return false
		}
	}
	month, day := value[5:7], value[8:]
	return "01" <= month && month <= "12" && "01" <= day && day <= "28"
}

// isQuantity reports whether a text goes on with a letter behind its first blank:
// no number and no date does.
func isQuantity(value string) bool {
	blank := strings.IndexByte(value, ' ')
	if blank < 0 || blank+1 >= len(value) {
		return false
	}
	c := value[blank+1]
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z'
}
