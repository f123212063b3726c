// Package web makes the static site of its ingredients and serves it.
//
// Every style sheet, script and module lies in one folder that is named by a
// hash over all of them, a-<hash>/. They name one another by relative paths,
// load as files of any server, and may be kept for ever: what changes lies in
// another folder. What must keep its address stands beside that folder: the
// page itself, the service worker, the manifest, the icon, the posters, the
// example designs, the schemas, and what tells servers which headers to send.
//
// Texts and modules are compressed beforehand (.br and .gz). A Site is built in
// memory; Write puts it into a folder and Handler serves it.
package web

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"fmt"
	"image"
	"io"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"

	"blockfield/engine/page"
)

// Names of ingredients that the build does something with.
const (
	loader       = "wasm_exec.js"      // Go's loader, inline in the frame and loaded by the worker
	frameScript  = "preview-frame.js"  // inline in the frame
	workerScript = "service-worker.js" // is given the list of files and served from the top
	manifest     = "manifest.webmanifest"
	icon         = "icon.svg"
	styleSheet   = "page.css"
)

// hashLength is how much of a SHA-256 names a folder or a version, in
// hexadecimal digits: 48 bits, far more than the builds of one site need.
const hashLength = 12

// Ingredients is everything that a site is made of.
type Ingredients struct {
	Assets  fs.FS             // style sheets, scripts, icon, manifest
	Fonts   map[string][]byte // faces of the papers by file name
	Modules fs.FS             // engine.wasm, preview.wasm, wasm_exec.js
	Designs fs.FS             // the example designs
	Schemas map[string][]byte // JSON Schemas by file name
	Poster  image.Image       // the default design, in the size of the largest poster
	// Examples are the designs that the page offers to open.
	Examples []page.Example
	Settings Settings // whose site it is
	About    string   // what it is, in its language
	// Index writes the page; the addresses that it needs are relative to it.
	Index func(io.Writer, page.Assets) error
}

// Options say how much work goes into a site.
type Options struct {
	// Brotli is the effort of compression, 1 to 11; 0 leaves everything
	// uncompressed.
	Brotli int
}

// Site is a built site: its files by their path from the top. The page itself
// is index.html.
type Site struct {
	files  map[string]*File
	policy contentPolicy
}

// File is one file of a site.
type File struct {
	Body   []byte
	Brotli []byte // nil where it would not be smaller
	Gzip   []byte
	Type   string // media type
	Keep   bool   // the address names the content: it may be kept for ever
}

// Build makes the site.
func Build(in Ingredients, opt Options) (*Site, error) {
	s := &Site{files: map[string]*File{}}
	assets, err := readAll(in.Assets, in.Modules)
	if err != nil {
		return nil, err
	}
	for _, name := range []string{loader, frameScript, workerScript, manifest, icon, styleSheet} {
		if assets[name] == nil {
			return nil, fmt.Errorf("build: %s is missing from the ingredients", name)
		}
	}
	maps.Copy(assets, in.Fonts)
	s.policy = newPolicy(assets[loader], assets[frameScript], in.Settings.Frames)
	b := branded(in.Settings, assets[icon])
	about, err := b.manifest(assets[manifest], in)
	if err != nil {
		return nil, err
	}
	if in.Settings.Accent != nil {
		assets[styleSheet] = append(slices.Clone(assets[styleSheet]), in.Settings.Accent.style()...)
	}
	top := b.files
	top[manifest] = about
	serviceWorker := assets[workerScript]
	for _, name := range []string{manifest, icon, workerScript} {
		delete(assets, name)
	}
	folder := "a-" + hash(assets)
	for name, body := range assets {
		s.add(path.Join(folder, name), body, true)
	}
	for name, body := range top {
		s.add(name, body, false)
	}
	if err := s.addPosters(in.Poster); err != nil {
		return nil, err
	}
	if err := s.addDesigns(in); err != nil {
		return nil, err
	}
	if err := s.addIndex(in, b, folder); err != nil {
		return nil, err
	}
	s.addServiceWorker(serviceWorker)
	if opt.Brotli > 0 {
		if err := s.compress(opt.Brotli); err != nil {
			return nil, err
		}
	}
	s.addServers(folder)
	return s, nil
}

func (s *Site) addIndex(in Ingredients, of brand, folder string) error {
	assets := page.Assets{Folder: folder + "/", Examples: in.Examples, Brand: of.shown, Policy: s.policy.own}
	for _, p := range posters {
		assets.Posters = append(assets.Posters, page.Picture{Address: p.name, Width: p.width, Height: p.height})
	}
	var b bytes.Buffer
	if err := in.Index(&b, assets); err != nil {
		return fmt.Errorf("build: index.html: %w", err)
	}
	s.add("index.html", b.Bytes(), false)
	return nil
}

func (s *Site) addDesigns(in Ingredients) error {
	designs, err := readAll(in.Designs)
	if err != nil {
		return err
	}
	for name, body := range designs {
		if path.Ext(name) == ".json" {
			s.add(path.Join("designs", name), body, false)
		}
	}
	for name, body := range in.Schemas {
		s.add(name, body, false)
	}
	return nil
}

// addServiceWorker must come last of all that a visitor may need offline.
func (s *Site) addServiceWorker(script []byte) {
	bodies := map[string][]byte{workerScript: script}
	var files []string
	for name, f := range s.files {
		bodies[name] = f.Body
		address := name
		if name == "index.html" {
			address = "./"
		}
		if !strings.HasSuffix(name, ".schema.json") {
			sum := sha256.Sum256(f.Body)
			files = append(files, fmt.Sprintf("  [%q, \"sha256-%s\"],\n", address, base64.StdEncoding.EncodeToString(sum[:])))
		}
	}
	slices.Sort(files)
	head := fmt.Sprintf("const VERSION = %q;\nconst FILES = [\n%s];\n", hash(bodies), strings.Join(files, ""))
	s.add(workerScript, append([]byte(head), script...), false)
}

func (s *Site) add(name string, body []byte, keep bool) {
	s.files[name] = &File{Body: body, Type: mediaType(name), Keep: keep}
}

// Names are the paths of all files, sorted.
func (s *Site) Names() []string { return slices.Sorted(maps.Keys(s.files)) }

// File is the file at a path; nil where there is none.
func (s *Site) File(name string) *File { return s.files[name] }

// readAll reads whole trees into one map from path to content.
func readAll(trees ...fs.FS) (map[string][]byte, error) {
	all := map[string][]byte{}
	for _, tree := range trees {
		err := fs.WalkDir(tree, ".", func(name string, entry fs.DirEntry, err error) error {
			if err != nil || entry.IsDir() {
				return err
			}
			body, err := fs.ReadFile(tree, name)
			all[name] = body
			return err
		})
		if err != nil {
			return nil, fmt.Errorf("build: %w", err)
		}
	}
	return all, nil
}

// hash is a name for a set of files: a change of any name or content changes it.
func hash(files map[string][]byte) string {
	h := sha256.New()
	for _, name := range slices.Sorted(maps.Keys(files)) {
		fmt.Fprintf(h, "%q %d\n", name, len(files[name]))
		h.Write(files[name])
	}
	return hex.EncodeToString(h.Sum(nil))[:hashLength]
}

func mediaType(name string) string {
	switch path.Ext(name) {
	case ".html":
		return "text/html; charset=utf-8"
	case ".css":
		return "text/css; charset=utf-8"
	case ".js":
		return "text/javascript; charset=utf-8"
	case ".ttf":
		return "font/ttf"
	case ".wasm":
		return "application/wasm"
	case ".svg":
		return "image/svg+xml"
	case ".jpg":
		return "image/jpeg"
	case ".png":
		return "image/png"
	case ".webmanifest":
		return "application/manifest+json"
	case ".json":
		return "application/json"
	case ".txt":
		return "text/plain; charset=utf-8"
	}
	return "application/octet-stream"
}
