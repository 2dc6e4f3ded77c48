package wirelist

import (
	"strings"
	"testing"

	"driploop/model/record"
)

// FuzzImport: no list ends the program, and what is made of one is a record.
func FuzzImport(f *testing.F) {
	f.Add([]byte(ugly))
	f.Add([]byte("from,to\na +,b\n"))
	f.Add([]byte("id\tfrom\tto\tAWG\n1\tx\ty\t10\n"))
	f.Add([]byte("\xff\xfefrom,to\n\"a\nb\",c\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		g, err := ReadGrid("x.csv", text)
		if err != nil {
			return
		}
		got, err := Import("x.csv", g, Options{System: "12 V"})
		if err != nil {
			if strings.Contains(err.Error(), "cannot be made a record") {
				t.Fatalf("%v: %q", err, text)
			}
			return
		}
		if _, faults := record.Decode("x", got.Text); len(faults) > 0 {
			t.Fatalf("%v: %q", faults, text)
		}
	})
}
