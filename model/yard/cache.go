package yard

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"github.com/klauspost/compress/s2"
)

// CacheLimit is how much a cache may take on the disk unless told otherwise.
const CacheLimit = 512 << 20

// longestEntry bounds the body of an entry, bytes.
const longestEntry = 32 << 20

// Cache keeps what was judged, by what it was judged from, in segments: files to
// which one process each appends. Several processes may share a folder: each reads
// what was there when it began and writes segments of its own. An entry counts
// only if its checksum holds, so what is cut short, damaged or not ours is as if
// it were not there. A nil *Cache keeps nothing.
type Cache struct {
	dir      string
	limit    int64
	segments []*segment // that were there, the newest first

	mu     sync.Mutex
	out    *writing
	failed error // of writing; nothing more is written
}

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

// OpenCache opens a folder of segments, or the user's own where none is named. It
// takes at most limit bytes there, give or take a segment.
func OpenCache(dir string, limit int64) (*Cache, error) {
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
	c := &Cache{dir: dir, limit: limit}
	for _, info := range c.list() {
		if s := openSegment(filepath.Join(dir, info.Name()), info); s != nil {
			c.segments = append(c.segments, s)
		}
	}
	return c, nil
}

// list returns the segments in the folder, the newest first.
func (c *Cache) list() []os.FileInfo {
	entries, err := os.ReadDir(c.dir)
	if err != nil {
		return nil // what cannot be read is judged again
	}
	var all []os.FileInfo
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), segmentBeginning) || !strings.HasSuffix(e.Name(), segmentEnding) {
			continue
		}
		if info, err := e.Info(); err == nil && info.Mode().IsRegular() {
			all = append(all, info)
		}
	}
	slices.SortFunc(all, func(a, b os.FileInfo) int {
		if by := b.ModTime().Compare(a.ModTime()); by != 0 {
			return by
		}
		return strings.Compare(a.Name(), b.Name())
	})
	return all
}

// Get returns the body of an entry. One that hangs on the day of its verdicts
// holds for that day only.
func (c *Cache) Get(k Key, day string) ([]byte, bool) {
	if c == nil {
		return nil, false
	}
	for _, s := range c.segments {
		if packed, ok := s.get(k, day); ok {
			n, err := s2.DecodedLen(packed)
			if err != nil || n > longestEntry {
				return nil, false
			}
			body, err := s2.Decode(nil, packed)
			return body, err == nil
		}
	}
	return nil, false
}

// Put keeps an entry; day is empty where nothing hangs on it. It is not forced to
// the disk: of an entry that a power cut leaves half written the checksum fails.
// An error costs nothing but that the record is judged again.
func (c *Cache) Put(k Key, day string, body []byte) {
	if c == nil || len(body) > longestEntry || day != "" && len(day) != dayLength {
		return
	}
	packed := s2.Encode(nil, body)
	head := header(k, day, packed)
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.failed != nil {
		return
	}
	if c.out == nil {
		if c.out, c.failed = newWriting(c.dir); c.failed != nil {
			return
		}
	}
	c.failed = c.out.add(k, head, packed)
	if c.failed == nil && c.out.size >= segmentSize {
		c.failed = c.finish()
		c.trim()
	}
}

// finish ends the segment that is written.
func (c *Cache) finish() error {
	out := c.out
	c.out = nil
	if out == nil {
		return nil
	}
	return out.close()
}

// Close brings what was kept under its name, merges small segments, and lets the
// oldest go that are beyond the limit.
func (c *Cache) Close() error {
	if c == nil {
		return nil
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.failed != nil && c.out != nil {
		c.out.discard()
		c.out = nil
	}
	c.failed = errors.Join(c.failed, c.finish())
	c.touch()
	if c.failed == nil {
		c.merge()
	}
	c.trim()
	for _, s := range c.segments {
		_ = s.file.Close() // it was only read
	}
	c.segments = nil
	if c.failed != nil {
		return fmt.Errorf("the cache: %w", c.failed)
	}
	return nil
}

// stale is how long a segment that was read keeps its time: that of its last use,
// nearly.
const stale = time.Hour

// touch makes the segments that were of use the newest.
func (c *Cache) touch() {
	now := time.Now()
	for _, s := range c.segments {
		if s.used.Load() && now.Sub(s.modified) > stale {
			_ = os.Chtimes(s.path, now, now) // it may be gone
		}
	}
}
