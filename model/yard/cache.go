package yard

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// cacheFormat begins every entry; another version of the format has another.
const cacheFormat = "driploop.cache/1\n"

// longestEntry bounds what is read of an entry, bytes.
const longestEntry = 32 << 20

// Cache keeps what was judged, by what it was judged from. Several processes may
// share a folder: an entry appears whole, and what is not whole is not believed.
// A nil *Cache keeps nothing.
type Cache struct{ dir string }

// Key names an entry by all that its verdicts depend on.
type Key [sha256.Size]byte

// KeyOf returns the key of some parts.
func KeyOf(parts ...string) Key {
	sum := sha256.New()
	for _, p := range parts {
		fmt.Fprintf(sum, "%d\n%s", len(p), p)
	}
	return Key(sum.Sum(nil))
}

// OpenCache opens a folder of entries, or the user's own where none is named.
func OpenCache(dir string) (*Cache, error) {
	if dir == "" {
		user, err := os.UserCacheDir()
		if err != nil {
			return nil, fmt.Errorf("no folder for the cache: %w", err)
		}
		dir = filepath.Join(user, "driploop")
	}
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return nil, fmt.Errorf("the cache: %w", err)
	}
	return &Cache{dir}, nil
}

func (c *Cache) path(k Key) string {
	name := hex.EncodeToString(k[:])
	return filepath.Join(c.dir, name[:2], name[2:])
}

// seal is the checksum of an entry: it holds for its key only.
func seal(k Key, body []byte) [sha256.Size]byte {
	sum := sha256.New()
	sum.Write(k[:])
	sum.Write(body)
	return [sha256.Size]byte(sum.Sum(nil))
}

// Get returns the body of an entry. What is damaged, cut short, of another format
// or not a file counts as not there.
func (c *Cache) Get(k Key) ([]byte, bool) {
	if c == nil {
		return nil, false
	}
	info, err := os.Lstat(c.path(k))
	if err != nil || !info.Mode().IsRegular() || info.Size() > longestEntry {
		return nil, false
	}
	f, err := os.Open(c.path(k))
	if err != nil {
		return nil, false
	}
	defer f.Close()
	text := make([]byte, info.Size())
	if _, err := io.ReadFull(f, text); err != nil {
		return nil, false
	}
	rest, ok := bytes.CutPrefix(text, []byte(cacheFormat))
	if !ok || len(rest) < sha256.Size {
		return nil, false
	}
	body := rest[sha256.Size:]
	return body, seal(k, body) == [sha256.Size]byte(rest[:sha256.Size])
}

// Put keeps an entry. It is written beside its place and renamed. It is not
// forced to the disk: of an entry that a power cut leaves half written the
// checksum fails, and ten thousand waits for the disk cost more than judging.
func (c *Cache) Put(k Key, body []byte) error {
	if c == nil || len(body) > longestEntry-1024 {
		return nil
	}
	sum := seal(k, body)
	folder := filepath.Dir(c.path(k))
	f, err := os.CreateTemp(folder, ".new-*")
	if errors.Is(err, os.ErrNotExist) {
		if err = os.MkdirAll(folder, 0o700); err == nil {
			f, err = os.CreateTemp(folder, ".new-*")
		}
	}
	if err != nil {
		return fmt.Errorf("the cache: %w", err)
	}
	_, err = f.Write(append(append([]byte(cacheFormat), sum[:]...), body...))
	if err = errors.Join(err, f.Close()); err == nil {
		err = os.Rename(f.Name(), c.path(k))
	}
	if err != nil {
		return fmt.Errorf("the cache: %w", errors.Join(err, os.Remove(f.Name())))
	}
	return nil
}
