package main

import (
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/reports"
)

// answered has the answers that a draft needs.
const answered = "--kind windlass --boat M --voltage 12V --hull frp --propulsion diesel-inboard --current 35A --length 25ft"

// spoken are command lines that print, one for each command and format. JOB is a
// record with a breach, WIRES a wire list of it, RULES a folder of rules, PART the
// JSON of a run of one part.
func spoken() []string {
	all := []string{
		"", "--help", "--version", "help check", "completion bash", "cite", "cite --format json", "cite --format md", "cite --source", "cite --practice",
		"cite --source 33-cfr-183 --format md", "cite --example penetrations/no-drip-loop", "check --settings JOB", "check --join PART", "check --lines",
		"figures JOB", "figures JOB --working", "figures JOB --format json", "figures JOB --format csv", "figures JOB --format xlsx",
		"draw JOB", "facts JOB", "report JOB", "report JOB --format pdf", "report --join PART", "bundle", "start " + answered, "prove RULES", "ask JOB", "remedy JOB",
		"shape JOB", "shape --verify JOB", "schema", "schema --settings", "import --system 12V WIRES", "export JOB", "editor", "start rule stowage/hatch-open",
	}
	for _, format := range reports.FormatNames() {
		all = append(all, "check --all --no-cache --format "+format+" JOB")
	}
	return all
}

// stage is a folder with what the command lines name, and the text that each
// reads from standard input.
func stage(t *testing.T) (folder string, put *strings.Replacer) {
	t.Helper()
	folder = t.TempDir()
	in := func(name string) string { return filepath.Join(folder, name) }
	text, err := os.ReadFile("../../testdata/records/faulty/readme.yaml")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(in("job.yaml"), text, 0o600))
	for _, made := range []string{
		"export JOB -o WIRES", "start rule --in RULES stowage/line-long", "check --no-cache --gate none --format json --part 1/1 -o PART JOB",
	} {
		put = strings.NewReplacer("JOB", in("job.yaml"), "WIRES", in("wires.csv"), "RULES", in("house"), "PART", in("part.json"), "INTO", in("man"), "OUT", in("out"))
		_, errs, code := command(strings.Fields(put.Replace(made))...)
		require.Zero(t, code, errs)
	}
	t.Chdir(folder)
	return folder, put
}

func standardInput(line string) io.Reader {
	if strings.HasPrefix(line, "editor") {
		const hello = `{"jsonrpc": "2.0", "id": 1, "method": "initialize", "params": {"capabilities": {}}}`
		return strings.NewReader(fmt.Sprintf("Content-Length: %d\r\n\r\n%s", len(hello), hello))
	}
	if strings.Contains(line, "--lines") {
		return strings.NewReader(`{"path": "a", "text": "driploop: 1\njob: {number: J}\nvessel: {system: 12 V}\n"}` + "\n")
	}
	return strings.NewReader("")
}

func TestEveryCommandIsTriedOnAFullDisk(t *testing.T) {
	var named []string
	for _, line := range spoken() {
		named = append(named, strings.Split(line, " ")[0])
	}
	named = append(named, "manual") // it writes files and says nothing
	for _, c := range newRoot(&session{out: &output{w: io.Discard}}).Commands() {
		assert.Contains(t, named, c.Name())
	}
}

// TestOutputThatCannotBeWrittenIsAnError has every command print to a full disk,
// and into a pipe that nobody reads any more.
func TestOutputThatCannotBeWrittenIsAnError(t *testing.T) {
	if _, err := os.Stat("/dev/full"); err != nil {
		t.Skip("there is no /dev/full")
	}
	for name, c := range map[string]struct {
		open func(t *testing.T) *os.File
		want string
	}{
		"full": {func(t *testing.T) *os.File {
			f, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
			require.NoError(t, err)
			return f
		}, "no space left on device"},
		"closed": {func(t *testing.T) *os.File {
			r, w, err := os.Pipe()
			require.NoError(t, err)
			require.NoError(t, r.Close())
			return w
		}, "broken pipe"},
	} {
		t.Run(name, func(t *testing.T) {
			folder, put := stage(t)
			before := namesIn(t, folder)
			for _, line := range spoken() {
				w := c.open(t)
				var errs bytes.Buffer
				code := run(strings.Fields(put.Replace(line)), standardInput(line), w, &errs)
				_ = w.Close()
				assert.Equal(t, exitUnusable, code, "driploop %s: %s", line, errs.String())
				assert.Contains(t, errs.String(), "cannot write the output: write "+w.Name()+": "+c.want, "driploop %s", line)
				assert.Equal(t, 1, strings.Count(errs.String(), "cannot write"), "driploop %s says it once: %s", line, errs.String())
				assert.NotContains(t, errs.String(), "goroutine", line)
			}
			for _, made := range namesIn(t, folder) {
				if !slices.Contains(before, made) {
					assert.Regexp(t, `^(man|house-rules)(/|$)`, made, "nothing else is left")
				}
			}
		})
	}
}

// TestAFileOnAFullDiskIsWholeOrNotThere has every command that writes files do it
// where no file can grow.
func TestAFileOnAFullDiskIsWholeOrNotThere(t *testing.T) {
	if _, err := exec.LookPath("sh"); err != nil {
		t.Skip("there is no sh to set the limit by")
	}
	bin := program(t)
	folder, put := stage(t)
	lines := []string{
		"bundle -o OUT", "draw JOB -o OUT", "figures JOB -o OUT", "figures JOB --format json -o OUT", "figures JOB --format csv -o OUT", "figures JOB --format xlsx -o OUT",
		"report JOB -o OUT", "report JOB --format pdf -o OUT", "report JOB JOB -o OUTS/", "report --join PART -o OUT", "start -o OUT " + answered, "import --system 12V WIRES -o OUT", "export JOB -o OUT.csv",
		"export JOB -o OUT.xlsx", "ask --write JOB", "shape --write JOB", "remedy --write JOB", "start rule stowage/hatch-open", "manual --into INTO",
		"check --no-cache --write-baseline OUT JOB", "check --lines -o OUT", "check --join PART -o OUT",
	}
	for _, format := range reports.FormatNames() {
		lines = append(lines, "check --all --no-cache --format "+format+" -o OUT JOB")
	}
	for _, line := range lines {
		for _, old := range []bool{false, true} {
			out := filepath.Join(folder, "out")
			mayBeThere := strings.Contains(line, "-o OUT") && !strings.HasPrefix(line, "start") && !strings.HasPrefix(line, "import") && !strings.HasPrefix(line, "export")
			if old && !mayBeThere {
				continue
			}
			if old {
				require.NoError(t, os.WriteFile(out, []byte("as it was"), 0o600))
			}
			before := textsIn(t, folder)
			limited := exec.Command("sh", append([]string{"-c", `ulimit -f 0; trap '' XFSZ; exec "$0" "$@"`, bin}, strings.Fields(put.Replace(line))...)...)
			limited.Stdin = standardInput(line)
			said, err := limited.CombinedOutput()
			require.Error(t, err, "driploop %s: %s", line, said)
			assert.Equal(t, exitUnusable, limited.ProcessState.ExitCode(), "driploop %s: %s", line, said)
			assert.Contains(t, string(said), "file too large", "driploop %s", line)
			assert.NotContains(t, string(said), "goroutine", line)
			assert.Equal(t, before, textsIn(t, folder), "driploop %s: every file is as it was, and none is new", line)
			_ = os.Remove(out)
		}
	}
}

// namesIn returns the names of all that lies in a folder and below.
func namesIn(t *testing.T, folder string) (names []string) {
	t.Helper()
	require.NoError(t, fs.WalkDir(os.DirFS(folder), ".", func(path string, _ fs.DirEntry, err error) error {
		names = append(names, path)
		return err
	}))
	return names
}

// textsIn returns what the files in a folder and below hold.
func textsIn(t *testing.T, folder string) map[string]string {
	t.Helper()
	texts := map[string]string{}
	for _, name := range namesIn(t, folder) {
		if text, err := os.ReadFile(filepath.Join(folder, name)); err == nil {
			texts[name] = string(text)
		}
	}
	return texts
}
