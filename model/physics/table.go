package physics

import (
	"embed"
	"encoding/csv"
)

//go:embed data/*.csv
var files embed.FS

// load returns the lines of an embedded table without its head. A fault in one
// is a fault of the program, and the tests read all of them.
func load(name string) [][]string {
	file, err := files.Open("data/" + name)
	if err != nil {
		panic(err)
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	lines, err := reader.ReadAll()
	if err != nil {
		panic(err)
	}
	return lines[1:]
}
