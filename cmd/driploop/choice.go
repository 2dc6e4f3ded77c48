package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/agnivade/levenshtein"
)

// choice is a flag that takes one of a few words.
type choice struct {
	value string
	words []string
}

func (c *choice) String() string { return c.value }
func (c *choice) Type() string   { return "word" }

// Set takes a word of the choices.
func (c *choice) Set(word string) error {
	if !slices.Contains(c.words, word) {
		return fmt.Errorf("use %s%s", either(c.words), meant(word, c.words, ""))
	}
	c.value = word
	return nil
}

// either lists words as "a, b or c".
func either(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}

// meant asks whether the nearest word was meant; empty if none is near.
func meant(word string, words []string, prefix string) string {
	if near := nearest(word, words); near != "" {
		return fmt.Sprintf("; did you mean %q?", prefix+near)
	}
	return ""
}

// nearest is the word that takes the fewest changes of letters, if they are few
// for its length.
func nearest(word string, words []string) string {
	best, least := "", len(word)
	for _, w := range words {
		if d := levenshtein.ComputeDistance(strings.ToLower(word), strings.ToLower(w)); d < least && d <= 1+len(w)/3 {
			best, least = w, d
		}
	}
	return best
}
