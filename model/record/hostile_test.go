package record

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// allocated returns what decoding a text allocates in all, in MiB: a bound on
// its memory that does not depend on the machine.
func allocated(text []byte) (Faults, uint64) {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	_, faults := Decode("r", text)
	runtime.ReadMemStats(&after)
	return faults, (after.TotalAlloc - before.TotalAlloc) >> 20
}

func TestHostileTexts(t *testing.T) {
	fill := func(unit string) string { return strings.Repeat(unit, MaxBytes/len(unit)) }
	var cross strings.Builder
	for i := range 400 {
		fmt.Fprintf(&cross, "k%d: 1, ", i)
	}
	for _, c := range []struct {
		name, text string
		first      string // of the faults
		mib        uint64 // at most
	}{
		{"50 MiB", strings.Repeat("# x\n", 50<<18), "1:1: the file has 52428800 bytes; a record has at most 4194304", 1},
		{"open brackets", fill("["), "1:101: brackets stand more than 100 deep within each other; a record has fewer than ten", 1},
		{"open braces", fill("{a: "), "1:401: brackets stand more than 100 deep within each other; a record has fewer than ten", 1},
		{"deep brackets again and again", strings.Repeat("- "+strings.Repeat("[", 9000)+strings.Repeat("]", 9000)+"\n", MaxBytes/18003), "1:103: brackets stand more than 100 deep within each other; a record has fewer than ten", 1},
		{"deep lists on one line", strings.Repeat("- ", 9000) + "x", "1:1: a record is a mapping that begins with \"driploop: 1\"; here stands a list", 60},
		{"too deep lists on one line", strings.Repeat("- ", 11000) + "x", "1:20001: not YAML: exceeded max depth of 10000", 600},
		{"deep mappings", deepMapping(2800), "1:1: \"a\" is no key of a record", 60},
		{"two million values", "a: [" + strings.Repeat("a,", 2<<20-4) + "]", "1:2097152: the file has more than a million keys and values up to here; split it", 1},
		{"a million keys", strings.Repeat("a: b\n", 1<<19+1), "524289:2: the file has more than a million keys and values up to here; split it", 40},
		{"half a million keys", strings.Repeat("a: b\n", 1<<19-1), "1:1: \"a\" is no key of a record", 600},
		{"many conductors that are nothing", head + "conductors:\n" + strings.Repeat(" a: {}\n", 1<<18), "5:2: \"conductors\" has 262144 entries; a record has at most 20000", 400},
		{"comments", fill("# c\n"), "1:1: the file holds no record; begin it with \"driploop: 1\"", 200},
		{"one long line", "a: \"" + strings.Repeat("x", MaxBytes-8) + "\"", "1:1: \"a\" is no key of a record", 200},
		{"one long value", head + "sign_off: {on: " + strings.Repeat("9", MaxBytes/2) + "}", "4:16: \"" + strings.Repeat("9", 60) + "…\" is no date", 200},
		{"one long quantity", head + "spaces: {a: {volume: " + strings.Repeat("9", MaxBytes/2) + "}}", "4:22: \"" + strings.Repeat("9", 40) + "…\" is not a number", 200},
		{"one long id", head + "spaces: {" + strings.Repeat("a", 1000) + ": {}}", "4:10: this id of a space has 1000 characters; use at most 64", 1},
		{"a quotation mark that is not closed", "b: 1\na: \"" + fill("x\n")[:1<<19], "2:4: a quotation mark opens here and is not closed", 200},
		{"document after document", strings.Repeat("---\n", 1<<17), "2:1: a record is a mapping that begins with \"driploop: 1\"; here stands nothing", 100},
		{"a list bomb", head + "bundles:\n" + bomb(40, "{members: [", "]}", "P1") + "practice: *a0\n", "5:22: \"P1\" is no conductor", 60},
		{"a mapping bomb", head + "spaces:\n" + mergeBomb(14), "1:1: aliases and merge keys expand to more than 250000 entries; write them out or use fewer", 300},
		{"a wide merge", head + "spaces:\n  a: &a {" + cross.String() + "}\n  b: {<<: [" + strings.TrimSuffix(strings.Repeat("*a, ", 100_000), ", ") + "]}\n", "1:1: aliases and merge keys expand to more than 250000 entries", 400},
		{"tags", fill("!<"), "1:1: not YAML: did not find the expected '>'", 100},
	} {
		t.Run(c.name, func(t *testing.T) {
			faults, mib := allocated([]byte(c.text))
			require.NotEmpty(t, faults)
			assert.LessOrEqual(t, len(faults), maxFaults+1)
			first := strings.TrimPrefix(faults[0].String(), "r:")
			assert.Truef(t, strings.HasPrefix(first, c.first), "%.200s", first)
			assert.LessOrEqual(t, mib, c.mib, "MiB")
			for _, f := range faults {
				assert.Less(t, len(f.Says), 1000)
			}
		})
	}
}

func deepMapping(depth int) string {
	var b strings.Builder
	for i := range depth {
		b.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return b.String()
}

// mergeBomb merges each mapping nine times into the next.
func mergeBomb(depth int) string {
	var b strings.Builder
	b.WriteString("  a0: &a0 {kind: locker}\n")
	for i := 1; i < depth; i++ {
		alias := fmt.Sprintf("*a%d, ", i-1)
		fmt.Fprintf(&b, "  a%d: &a%d {<<: [%s]}\n", i, i, strings.TrimSuffix(strings.Repeat(alias, 9), ", "))
	}
	return b.String()
}

func TestFaultsAreListedUpToABound(t *testing.T) {
	_, faults := Decode("r", []byte(head+"spaces: {a: {"+strings.Repeat("x: 1, ", 2*maxFaults)+"}}\n"))
	require.Len(t, faults, maxFaults+1)
	assert.Equal(t, "r:4:6014: more than 1000 faults: the rest of the file was not read", faults[maxFaults].String())
}

func TestTextsThatAreNotUTF8(t *testing.T) {
	sixteen := func(order binary.ByteOrder, mark bool) []byte {
		var b bytes.Buffer
		text := "driploop: 1\n"
		if mark {
			text = "\ufeff" + text
		}
		for _, u := range utf16.Encode([]rune(text)) {
			require.NoError(t, binary.Write(&b, order, u))
		}
		return b.Bytes()
	}
	for name, c := range map[string]struct {
		text []byte
		want string
	}{
		"UTF-16 little-endian":              {sixteen(binary.LittleEndian, true), "r:1:1: the file is in UTF-16 or UTF-32; save it as UTF-8"},
		"UTF-16 big-endian":                 {sixteen(binary.BigEndian, true), "r:1:1: the file is in UTF-16 or UTF-32; save it as UTF-8"},
		"UTF-16 without a mark":             {sixteen(binary.LittleEndian, false), "r:1:2: a NUL byte stands here; save the file as plain text in UTF-8"},
		"Latin-1":                           {[]byte("driploop: 1\njob: {title: \xe9t\xe9}\n"), "r:2:14: the byte 0xe9 is not UTF-8; save the file as UTF-8"},
		"cut within a character":            {[]byte("driploop: 1 # \xc3"), "r:1:15: the byte 0xc3 is not UTF-8; save the file as UTF-8"},
		"a second byte order mark":          {[]byte("\ufeffdriploop: \ufeff1"), "r:1:11: the character U+FEFF stands here; delete it"},
		"a line separator":                  {[]byte("driploop: 1 \u2028"), "r:1:13: the character U+2028 stands here; delete it"},
		"NUL after a letter beyond ASCII":   {[]byte("é\x00"), "r:1:2: a NUL byte stands here; save the file as plain text in UTF-8"},
		"a surrogate":                       {[]byte("a: \xed\xa0\x80"), "r:1:4: the byte 0xed is not UTF-8; save the file as UTF-8"},
		"an overlong form":                  {[]byte("a: \xc0\xaf"), "r:1:4: the byte 0xc0 is not UTF-8; save the file as UTF-8"},
		"the byte order mark and no record": {[]byte("\ufeff"), "r:1:1: the file holds no record; begin it with \"driploop: 1\""},
	} {
		t.Run(name, func(t *testing.T) {
			_, faults := Decode("r", c.text)
			assert.Equal(t, c.want, faults.Error())
		})
	}
}

func TestReadRefusesWhatIsNoFile(t *testing.T) {
	dir := t.TempDir()
	fifo := filepath.Join(dir, "fifo")
	require.NoError(t, syscall.Mkfifo(fifo, 0o600))
	large := filepath.Join(dir, "large")
	require.NoError(t, os.WriteFile(large, make([]byte, MaxBytes+1), 0o600))
	full := filepath.Join(dir, "full")
	require.NoError(t, os.WriteFile(full, make([]byte, MaxBytes), 0o600))
	loop := filepath.Join(dir, "loop")
	require.NoError(t, os.Symlink(loop, loop))
	link := filepath.Join(dir, "link")
	require.NoError(t, os.Symlink(full, link))

	for path, want := range map[string]string{
		dir:                        "read record: " + dir + " is a folder; name a file",
		fifo:                       "read record: " + fifo + " is a named pipe; name a file",
		"/dev/zero":                "read record: /dev/zero is a device; name a file",
		large:                      "read record: " + large + " is too large for a record: it has more than 4 MiB",
		filepath.Join(dir, "none"): "read record: stat " + filepath.Join(dir, "none") + ": no such file or directory",
		loop:                       "read record: stat " + loop + ": too many levels of symbolic links",
	} {
		_, err := Read(path)
		assert.EqualError(t, err, want)
	}
	_, err := Read(large)
	assert.ErrorIs(t, err, ErrTooLarge)
	for _, path := range []string{full, link} {
		text, err := Read(path)
		require.NoError(t, err)
		assert.Len(t, text, MaxBytes)
	}
}
