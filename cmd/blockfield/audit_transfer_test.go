package main_test

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/stretchr/testify/require"
)

// auditTransfer lists the files of the built site, and what its largest consists of.
func auditTransfer(t *testing.T) string {
	type sum struct {
		name         string
		files        int
		raw, carried int
	}
	var sums []*sum
	add := func(name string, raw, carried int) {
		for _, s := range sums {
			if s.name == name {
				s.files, s.raw, s.carried = s.files+1, s.raw+raw, s.carried+carried
				return
			}
		}
		sums = append(sums, &sum{name, 1, raw, carried})
	}
	require.NoError(t, filepath.WalkDir(*auditSite, func(file string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || strings.HasSuffix(file, ".br") || strings.HasSuffix(file, ".gz") {
			return err
		}
		name, err := filepath.Rel(*auditSite, file)
		require.NoError(t, err)
		kind := strings.TrimPrefix(path.Ext(name), ".")
		if kind == "wasm" || name == "index.html" || strings.HasSuffix(name, ".schema.json") {
			kind = path.Base(name)
		}
		if strings.HasPrefix(name, "designs/") {
			kind = "examples"
		}
		raw, err := entry.Info()
		require.NoError(t, err)
		carried := raw.Size()
		if small, err := os.Stat(file + ".br"); err == nil {
			carried = small.Size()
		}
		add(kind, int(raw.Size()), int(carried))
		return nil
	}), "make site builds it")
	slices.SortFunc(sums, func(a, b *sum) int { return b.carried - a.carried })
	rows := [][]string{{"What", "files", "as built", "as sent (brotli 11)"}}
	all := sum{}
	for _, s := range sums {
		rows = append(rows, []string{s.name, fmt.Sprint(s.files), kilobytes(s.raw), kilobytes(s.carried)})
		all.files, all.raw, all.carried = all.files+s.files, all.raw+s.raw, all.carried+s.carried
	}
	rows = append(rows, []string{"**all**", fmt.Sprint(all.files), kilobytes(all.raw), kilobytes(all.carried)})
	return table(rows) + "\n" + moduleParts(t, "engine") + "\n" + moduleParts(t, "preview")
}

// moduleParts says which packages the code of a module is of. The names are those of a
// module that keeps them, linked of the same code.
func moduleParts(t *testing.T, name string) string {
	file := filepath.Join(t.TempDir(), name+".wasm")
	flags, err := moduleFlags(name)
	require.NoError(t, err)
	args := append(flags, "-o", file, "blockfield/wasm/"+name)
	build := exec.Command("go", append([]string{"build"}, slices.DeleteFunc(args, func(a string) bool { return strings.HasPrefix(a, "-ldflags") })...)...)
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	said, err := build.CombinedOutput()
	require.NoError(t, err, string(said))
	body, err := os.ReadFile(file)
	require.NoError(t, err)
	m := readModule(body)
	require.NotEmpty(t, m.functions)
	sums := map[string]int{}
	for _, f := range m.functions {
		sums[f.of] += f.size
	}
	names := make([]string, 0, len(sums))
	for of := range sums {
		names = append(names, of)
	}
	slices.SortFunc(names, func(a, b string) int { return sums[b] - sums[a] })
	const shown = 16
	rows := [][]string{{"Code of " + name + ".wasm", "as built"}}
	rest := 0
	for i, of := range names {
		if i < shown {
			rows = append(rows, []string{of, kilobytes(sums[of])})
		} else {
			rest += sums[of]
		}
	}
	rows = append(rows, []string{fmt.Sprintf("%d others", len(names)-shown), kilobytes(rest)})
	return fmt.Sprintf("%s.wasm: code %s (%s by brotli 9 alone), data %s (%s): types, tables of functions, words, templates.\n\n",
		name, kilobytes(len(m.code)), kilobytes(small(t, m.code)), kilobytes(len(m.data)), kilobytes(small(t, m.data))) + table(rows)
}

func small(t *testing.T, body []byte) int {
	t.Helper()
	var b bytes.Buffer
	w := brotli.NewWriterLevel(&b, 9)
	_, err := w.Write(body)
	require.NoError(t, err)
	require.NoError(t, w.Close())
	return b.Len()
}

// module is a WebAssembly module, taken apart (WebAssembly Core Specification 2.0, 5.5).
type module struct {
	code, data []byte
	functions  []function
}

type function struct {
	of   string // package
	size int
}

// Ids of sections and kinds of imports of the specification.
const (
	sectionCustom, sectionImport, sectionCode, sectionData = 0, 2, 10, 11
	importFunction, importTable, importMemory              = 0, 1, 2
	functionNames                                          = 1
)

func readModule(body []byte) (m module) {
	const header = 8
	r := &reader{body[header:]}
	var sizes []int
	names := map[int]string{}
	imported := 0
	for len(r.rest) > 0 {
		id := r.byte()
		section := &reader{r.take(r.number())}
		switch id {
		case sectionImport:
			for range section.number() {
				section.text()
				section.text()
				switch section.byte() {
				case importFunction:
					section.number()
					imported++
				case importTable:
					section.byte()
					section.limits()
				case importMemory:
					section.limits()
				default:
					section.take(2)
				}
			}
		case sectionCode:
			m.code = section.rest
			for range section.number() {
				size := section.number()
				section.take(size)
				sizes = append(sizes, size)
			}
		case sectionData:
			m.data = section.rest
		case sectionCustom:
			if section.text() != "name" {
				continue
			}
			for len(section.rest) > 0 {
				kind, part := section.byte(), &reader{section.take(section.number())}
				if kind != functionNames {
					continue
				}
				for range part.number() {
					at := part.number()
					names[at] = part.text()
				}
			}
		}
	}
	for i, size := range sizes {
		m.functions = append(m.functions, function{packageOf(names[i+imported]), size})
	}
	return m
}

// packageOf is the package of a function by its name, in which the linker has written "_"
// for what a name of WebAssembly may not hold.
func packageOf(name string) string {
	name, _, _ = strings.Cut(name, "[")
	if rest, ok := strings.CutPrefix(name, "type:"); ok {
		name = rest
	}
	if rest, ok := strings.CutPrefix(name, "github.com_"); ok {
		of, _, _ := strings.Cut(rest, ".")
		return of
	}
	of, _, ok := strings.Cut(name, ".")
	if !ok {
		return "others"
	}
	return of
}

type reader struct{ rest []byte }

func (r *reader) byte() byte {
	b := r.rest[0]
	r.rest = r.rest[1:]
	return b
}

func (r *reader) number() int {
	v, n := binary.Uvarint(r.rest)
	r.rest = r.rest[n:]
	return int(v)
}

func (r *reader) take(n int) []byte {
	part := r.rest[:n]
	r.rest = r.rest[n:]
	return part
}

func (r *reader) text() string { return string(r.take(r.number())) }

func (r *reader) limits() {
	if r.byte()&1 != 0 {
		r.number()
	}
	r.number()
}
