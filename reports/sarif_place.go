package reports

import (
	"net/url"
	"path/filepath"
	"strings"

	"driploop/model/verdict"
)

// baseID names the folder that relative paths start from.
const baseID = "ROOT"

// file returns the reference to a file, and lists it when first met.
func (s *sarif) file(path, sha256 string) sarifArtifact {
	at := artifact(path)
	i, listed := s.fileAt[path]
	if !listed {
		i = len(s.artifacts)
		s.fileAt[path] = i
		f := sarifFile{Location: at, Roles: []string{"analysisTarget"}}
		if sha256 != "" {
			f.Hashes = map[string]string{"sha-256": sha256}
		}
		s.artifacts = append(s.artifacts, f)
	}
	at.Index = &i
	return at
}

// artifact writes a path as the reference of an artifact.
func artifact(path string) sarifArtifact {
	steps := strings.Split(filepath.ToSlash(path), "/")
	for i, step := range steps {
		steps[i] = strings.ReplaceAll(url.PathEscape(step), ":", "%3A")
	}
	uri := strings.Join(steps, "/")
	if strings.HasPrefix(uri, "/") {
		return sarifArtifact{URI: "file://" + uri}
	}
	return sarifArtifact{URI: uri, BaseID: baseID}
}

// located is a part of a record and where it stands.
func located(file sarifArtifact, subject string, at verdict.Range, src *Source) sarifLocation {
	l := sarifLocation{Physical: &sarifPhysical{Artifact: file}}
	if at.Start.Line > 0 {
		l.Physical.Region, l.Physical.Context = region(at, src)
	}
	if subject != "" {
		l.Logical = []sarifLogical{{Name: subject, Kind: "member"}}
	}
	return l
}

// region gives a range and the line that it begins in, each with its text where
// the record is at hand.
func region(at verdict.Range, src *Source) (own, line *sarifRegion) {
	own = &sarifRegion{StartLine: at.Start.Line, StartColumn: at.Start.Column}
	if at.End.Line > at.Start.Line || at.End.Line == at.Start.Line && at.End.Column >= at.Start.Column {
		own.EndLine, own.EndColumn = at.End.Line, at.End.Column
	}
	if at.Start.Line > src.lines() {
		return own, nil
	}
	text, _ := src.line(at.Start.Line)
	if len(text) > longestLine {
		return own, nil
	}
	if runes := []rune(text); own.EndLine == own.StartLine && own.EndColumn > own.StartColumn && own.EndColumn <= len(runes)+1 {
		own.Snippet = &sarifText{Text: string(runes[own.StartColumn-1 : own.EndColumn-1])}
	}
	return own, &sarifRegion{StartLine: at.Start.Line, EndLine: max(own.EndLine, at.Start.Line), Snippet: lineSnippet(src, at)}
}

// lineSnippet is the text of the lines that a range touches.
func lineSnippet(src *Source, at verdict.Range) *sarifText {
	var lines []string
	for n := at.Start.Line; n <= min(max(at.End.Line, at.Start.Line), src.lines()); n++ {
		text, _ := src.line(n)
		lines = append(lines, text)
	}
	return &sarifText{Text: strings.Join(lines, "\n")}
}
