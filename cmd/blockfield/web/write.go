package web

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// Write puts the site into a folder, made where it is missing, with the
// compressed forms beside each file. Folders of older builds stay: a page that
// is open somewhere may still ask for them. What a page asks for first comes last, so
// that one which is opened meanwhile finds what it names.
func (s *Site) Write(dir string) error {
	for _, name := range s.order() {
		f := s.files[name]
		to := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			return fmt.Errorf("build: %w", err)
		}
		for suffix, body := range map[string][]byte{"": f.Body, ".br": f.Brotli, ".gz": f.Gzip} {
			if err := replace(to+suffix, body, suffix != "" && body == nil); err != nil {
				return fmt.Errorf("build: %w", err)
			}
		}
	}
	return nil
}

// order is that of writing: the page and then the service worker last.
func (s *Site) order() []string {
	late := func(name string) int { return slices.Index([]string{"index.html", workerScript}, name) }
	names := s.Names()
	slices.SortStableFunc(names, func(a, b string) int { return late(a) - late(b) })
	return names
}

// replace writes a file, or takes away what an older build left in its place.
func replace(name string, body []byte, gone bool) error {
	if !gone {
		return os.WriteFile(name, body, 0o644)
	}
	if err := os.Remove(name); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return nil
}
