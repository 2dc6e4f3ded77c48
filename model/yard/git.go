package yard

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"

	"driploop/model/record"
)

// repository is a repository of git, asked by its own program.
type repository struct {
	ctx context.Context //nolint:containedctx // that of the one command that asks
	top string
}

// openRepository finds the repository that a path lies in.
func openRepository(ctx context.Context, path string) (*repository, error) {
	r := &repository{ctx: ctx, top: path}
	top, err := r.line("rev-parse", "--show-toplevel")
	if err != nil {
		return nil, err
	}
	r.top = top
	return r, nil
}

// git runs git in the repository and returns what it prints.
func (r *repository) git(args ...string) ([]byte, error) {
	cmd := r.command(args...)
	var out, says bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &says
	err := cmd.Run()
	var failed *exec.ExitError
	switch {
	case errors.Is(err, exec.ErrNotFound):
		return nil, errors.New("git is needed to compare revisions, and is not installed")
	case errors.As(err, &failed):
		return out.Bytes(), fmt.Errorf("git %s: %s", args[0], strings.TrimSpace(strings.TrimPrefix(says.String(), "fatal: ")))
	case err != nil:
		return nil, fmt.Errorf("git %s: %w", args[0], err)
	}
	return out.Bytes(), nil
}

// command is a run of git that starts no program of a repository's settings.
func (r *repository) command(args ...string) *exec.Cmd {
	all := append([]string{"-C", r.top, "-c", "core.fsmonitor=false", "-c", "core.quotepath=off"}, args...)
	return exec.CommandContext(r.ctx, "git", all...) //nolint:gosec // no argument comes from a file
}

func (r *repository) line(args ...string) (string, error) {
	out, err := r.git(args...)
	return strings.TrimSuffix(string(out), "\n"), err
}

// base returns the commit at which the work since a revision began: where it
// and HEAD parted.
func (r *repository) base(revision string) (string, error) {
	if strings.HasPrefix(revision, "-") {
		return "", fmt.Errorf("%q is no revision", revision)
	}
	commit, err := r.line("rev-parse", "--verify", "--quiet", revision+"^{commit}")
	if err != nil && revision == "HEAD" {
		return r.line("hash-object", "-t", "tree", "--stdin") // before the first commit there is nothing
	}
	if err != nil {
		return "", fmt.Errorf("git knows no revision %q here; a shallow clone has to fetch it first", revision)
	}
	base, err := r.line("merge-base", commit, "HEAD")
	if err != nil || base == "" {
		return "", fmt.Errorf("git finds no commit that %q and HEAD both come from; a shallow clone has to fetch more of its history", revision)
	}
	return base, nil
}

// entry is a file that differs between two states of a repository.
type entry struct {
	status   byte   // A, C, D, M, R, T
	old, new string // paths from the top of the repository
	was, is  string // blobs; empty for none
}

// changed lists the files that differ from a commit, in the index or in the
// folder itself.
func (r *repository) changed(base string, staged bool) ([]entry, error) {
	args := []string{"diff", "--raw", "-z", "--no-abbrev", "--no-ext-diff", "--no-textconv", "-M", "-l0", "--ignore-submodules"}
	if staged {
		args = append(args, "--cached")
	}
	out, err := r.git(append(args, base)...)
	if err != nil {
		return nil, err
	}
	all, err := readRaw(string(out))
	if err != nil || staged {
		return all, err
	}
	// What git does not know yet.
	out, err = r.git("ls-files", "--others", "-z")
	for name := range strings.SplitSeq(string(out), "\x00") {
		if name != "" {
			all = append(all, entry{status: 'A', new: name})
		}
	}
	return all, err
}

// readRaw reads the raw form of a difference:
// ":100644 100644 BLOB BLOB M", then one path or two.
func readRaw(text string) ([]entry, error) {
	var all []entry
	fields := strings.Split(text, "\x00")
	for i := 0; i+1 < len(fields); {
		head := strings.Fields(strings.TrimPrefix(fields[i], ":"))
		if len(head) != 5 || head[4] == "" {
			return nil, fmt.Errorf("git diff said what is not understood: %q", fields[i])
		}
		e := entry{status: head[4][0], old: fields[i+1], new: fields[i+1], was: blob(head[0], head[2]), is: blob(head[1], head[3])}
		i += 2
		if e.status == 'R' || e.status == 'C' {
			if i >= len(fields) {
				return nil, fmt.Errorf("git diff stopped in the middle of %q", e.old)
			}
			e.new = fields[i]
			i++
		}
		all = append(all, e)
	}
	return all, nil
}

// blob is the id of the contents of an ordinary file, or empty.
func blob(mode, id string) string {
	if !strings.HasPrefix(mode, "100") || strings.Trim(id, "0") == "" {
		return ""
	}
	return id
}

// blobs reads the contents of files that git keeps. It is safe for concurrent
// use.
type blobs struct {
	mu  sync.Mutex
	cmd *exec.Cmd
	in  io.WriteCloser
	out *bufio.Reader
}

func (r *repository) blobs() (*blobs, error) {
	b := &blobs{cmd: r.command("cat-file", "--batch")}
	var err error
	if b.in, err = b.cmd.StdinPipe(); err != nil {
		return nil, fmt.Errorf("git cat-file: %w", err)
	}
	out, err := b.cmd.StdoutPipe()
	if err != nil {
		return nil, fmt.Errorf("git cat-file: %w", err)
	}
	b.out = bufio.NewReader(out)
	if err := b.cmd.Start(); err != nil {
		return nil, fmt.Errorf("git cat-file: %w", err)
	}
	return b, nil
}

// read returns the contents of a file, up to the size of a record.
func (b *blobs) read(id string) ([]byte, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if _, err := io.WriteString(b.in, id+"\n"); err != nil {
		return nil, fmt.Errorf("git cat-file: %w", err)
	}
	head, err := b.out.ReadString('\n')
	if err != nil {
		return nil, fmt.Errorf("git cat-file: %w", err)
	}
	var got, kind string
	var size int64
	if n, err := fmt.Sscanf(head, "%s %s %d", &got, &kind, &size); err != nil || n != 3 || kind != "blob" {
		return nil, fmt.Errorf("git cat-file: %s", strings.TrimSpace(head))
	}
	text, err := io.ReadAll(io.LimitReader(b.out, min(size, record.MaxBytes+1)))
	if err == nil {
		_, err = io.CopyN(io.Discard, b.out, size-int64(len(text))+1) // and the line end
	}
	if err != nil {
		return nil, fmt.Errorf("git cat-file: %w", err)
	}
	if len(text) > record.MaxBytes {
		return nil, record.ErrTooLarge
	}
	return text, nil
}

// close ends the program behind it.
func (b *blobs) close() error {
	b.in.Close()
	return b.cmd.Wait()
}

// below returns a path as seen from the top of the repository.
func (r *repository) below(path string) (string, error) {
	whole, err := filepath.Abs(path)
	if err != nil {
		return "", fmt.Errorf("%s: %w", path, err)
	}
	folder, err := filepath.EvalSymlinks(filepath.Dir(whole))
	if err != nil {
		return "", fmt.Errorf("%s: %w", path, err)
	}
	relative, err := filepath.Rel(r.top, filepath.Join(folder, filepath.Base(whole)))
	if err != nil || !filepath.IsLocal(relative) {
		return "", fmt.Errorf("%s is not in the repository %s", path, r.top)
	}
	return filepath.ToSlash(relative), nil
}
