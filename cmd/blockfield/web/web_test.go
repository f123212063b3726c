package web_test

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"image/jpeg"
	"io"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"github.com/andybalholm/brotli"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/cmd/blockfield/web"
	"blockfield/engine/page"
)

// ingredients are those that the program carries, with modules and a page that
// are quick to make.
func ingredients(t *testing.T) web.Ingredients {
	t.Helper()
	in, err := carried()
	require.NoError(t, err)
	return in
}

// carried draws the poster once for all tests.
var carried = sync.OnceValues(func() (web.Ingredients, error) {
	return web.Carried(fstest.MapFS{
		"engine.wasm":  {Data: []byte("\x00asm" + strings.Repeat("engine ", 1000))},
		"preview.wasm": {Data: []byte("\x00asm preview")},
		"wasm_exec.js": {Data: nil},
	}, web.Settings{WriteTo: "workshop@example.org"})
})

func build(t *testing.T, in web.Ingredients, effort int) *web.Site {
	t.Helper()
	s, err := web.Build(in, web.Options{Brotli: effort})
	require.NoError(t, err)
	return s
}

// folder is the hashed folder of a site.
func folder(t *testing.T, s *web.Site) string {
	t.Helper()
	for _, name := range s.Names() {
		if dir, file := filepath.Split(name); file == "engine.wasm" {
			return dir
		}
	}
	require.Fail(t, "no engine.wasm")
	return ""
}

func TestBuildHasEverything(t *testing.T) {
	t.Parallel()
	s := build(t, ingredients(t), 0)
	dir := folder(t, s)
	assert.Regexp(t, `^a-[0-9a-f]{12}/$`, dir)
	for _, name := range []string{
		"index.html", "service-worker.js", "manifest.webmanifest", "icon.svg", "headers.txt",
		"design.schema.json", "book.schema.json", "selling.schema.json", "record.schema.json", "letter.schema.json", "designs/s1.json", "designs/s8-second.json", "designs/p2.json",
		dir + "preview.wasm", dir + "wasm_exec.js", dir + "preview.js", dir + "preview-frame.js",
	} {
		assert.Contains(t, s.Names(), name)
	}
	assert.NotContains(t, s.Names(), dir+"service-worker.js", "a service worker below the top could not keep the page")
	assert.Contains(t, string(s.File("index.html").Body), dir, "the page names the folder")
}

func TestPosters(t *testing.T) {
	t.Parallel()
	s := build(t, ingredients(t), 0)
	for name, width := range map[string]int{"poster-small.jpg": 1200, "poster-large.jpg": 2400} {
		body := s.File(name).Body
		assert.LessOrEqual(t, len(body), 120_000, name)
		picture, err := jpeg.Decode(bytes.NewReader(body))
		require.NoError(t, err, name)
		assert.Equal(t, width, picture.Bounds().Dx(), name)
		assert.Equal(t, width*2/5, picture.Bounds().Dy(), name)
	}
}

// Whatever changes in an asset moves the folder; what does not lie in it does
// not move it, but makes another version.
func TestHashes(t *testing.T) {
	t.Parallel()
	version := func(s *web.Site) string {
		line, _, _ := strings.Cut(string(s.File("service-worker.js").Body), "\n")
		return line
	}
	in := ingredients(t)
	first, again := build(t, in, 0), build(t, in, 0)
	assert.Equal(t, folder(t, first), folder(t, again))
	assert.Equal(t, version(first), version(again))

	in.Modules = with(t, in.Modules, "engine.wasm", "\x00asm other")
	module := build(t, in, 0)
	assert.NotEqual(t, folder(t, first), folder(t, module))
	assert.NotEqual(t, version(first), version(module))

	in = ingredients(t)
	in.Designs = with(t, in.Designs, "s1.json", "{}")
	design := build(t, in, 0)
	assert.Equal(t, folder(t, first), folder(t, design))
	assert.NotEqual(t, version(first), version(design))
}

// with is a tree with one file replaced.
func with(t *testing.T, tree fs.FS, name, text string) fs.FS {
	t.Helper()
	out := fstest.MapFS{name: {Data: []byte(text)}}
	require.NoError(t, fs.WalkDir(tree, ".", func(n string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() || n == name {
			return err
		}
		body, err := fs.ReadFile(tree, n)
		out[n] = &fstest.MapFile{Data: body}
		return err
	}))
	return out
}

// What the service worker keeps is what the page can ask for, and all of it
// exists: one missing file would keep it from ever being installed.
func TestServiceWorkerKeepsTheSite(t *testing.T) {
	t.Parallel()
	s := build(t, ingredients(t), 0)
	script := string(s.File("service-worker.js").Body)
	_, list, _ := strings.Cut(script, "const FILES = [\n")
	list, _, _ = strings.Cut(list, "];\n")
	kept := map[string]bool{}
	for line := range strings.Lines(list) {
		name, digest, _ := strings.Cut(strings.Trim(line, " ,[]\n\""), `", "sha256-`)
		kept[name] = true
		body := s.File("index.html").Body
		if name != "./" {
			body = s.File(name).Body
		}
		sum := sha256.Sum256(body)
		assert.Equal(t, base64.StdEncoding.EncodeToString(sum[:]), digest, name)
	}
	assert.True(t, kept["./"], "the page itself")
	for _, name := range s.Names() {
		switch name {
		case "index.html", "service-worker.js", "headers.txt", "_headers", ".htaccess", "servers/nginx.conf", "servers/Caddyfile",
			"design.schema.json", "book.schema.json", "selling.schema.json", "record.schema.json", "letter.schema.json":
			assert.False(t, kept[name], name)
		default:
			assert.True(t, kept[name], name)
			delete(kept, name)
		}
	}
	delete(kept, "./")
	assert.Empty(t, kept, "kept without being there")
}

func TestBuildRefuses(t *testing.T) {
	t.Parallel()
	in := ingredients(t)
	in.Modules = fstest.MapFS{"engine.wasm": {}, "preview.wasm": {}}
	_, err := web.Build(in, web.Options{})
	assert.EqualError(t, err, "build: wasm_exec.js is missing from the ingredients")

	in = ingredients(t)
	in.Index = func(io.Writer, page.Assets) error { return io.ErrUnexpectedEOF }
	_, err = web.Build(in, web.Options{})
	assert.ErrorIs(t, err, io.ErrUnexpectedEOF)
}

func ask(t *testing.T, h http.Handler, method, path string, header map[string]string) *http.Response {
	t.Helper()
	r := httptest.NewRequest(method, path, nil)
	for name, v := range header {
		r.Header.Set(name, v)
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w.Result()
}

func TestHandlerAnswers(t *testing.T) {
	t.Parallel()
	s := build(t, ingredients(t), 9)
	h := s.Handler()
	dir := "/" + folder(t, s)
	cases := []struct {
		method, path string
		code         int
		mediaType    string
		cache        string
	}{
		{"GET", "/", 200, "text/html; charset=utf-8", "no-cache"},
		{"GET", "/index.html", 200, "text/html; charset=utf-8", "no-cache"},
		{"HEAD", "/", 200, "text/html; charset=utf-8", "no-cache"},
		{"GET", "/?x=1", 200, "text/html; charset=utf-8", "no-cache"},
		{"GET", "/service-worker.js", 200, "text/javascript; charset=utf-8", "no-cache"},
		{"GET", "/manifest.webmanifest", 200, "application/manifest+json", "no-cache"},
		{"GET", "/icon.svg", 200, "image/svg+xml", "no-cache"},
		{"GET", "/designs/s1.json", 200, "application/json", "no-cache"},
		{"GET", "/poster-large.jpg", 200, "image/jpeg", "no-cache"},
		{"GET", dir + "engine.wasm", 200, "application/wasm", "public, max-age=31536000, immutable"},
		{"GET", dir + "preview.js", 200, "text/javascript; charset=utf-8", "public, max-age=31536000, immutable"},
		{"GET", dir, 404, "text/plain; charset=utf-8", "no-cache"},
		{"GET", "/../etc/passwd", 404, "text/plain; charset=utf-8", "no-cache"},
		{"GET", "/designs", 404, "text/plain; charset=utf-8", "no-cache"},
		{"POST", "/", 405, "text/plain; charset=utf-8", ""},
	}
	for _, c := range cases {
		res := ask(t, h, c.method, c.path, nil)
		assert.Equal(t, c.code, res.StatusCode, "%s %s", c.method, c.path)
		assert.Equal(t, c.mediaType, res.Header.Get("Content-Type"), c.path)
		assert.Equal(t, c.cache, res.Header.Get("Cache-Control"), c.path)
		assert.Equal(t, "nosniff", res.Header.Get("X-Content-Type-Options"), c.path)
		assert.Contains(t, res.Header.Get("Content-Security-Policy"), "default-src 'none'; script-src 'self'", c.path)
		if c.method == "HEAD" {
			body, _ := io.ReadAll(res.Body)
			assert.Empty(t, body)
		}
	}
}

// The hash of an empty script is the SHA-256 of the empty text, as FIPS 180-4's
// examples and any sha256sum give it, in base64. The loader of these
// ingredients is empty.
func TestPolicyHoldsTheHashOfTheLoader(t *testing.T) {
	t.Parallel()
	res := ask(t, build(t, ingredients(t), 0).Handler(), "GET", "/", nil)
	policy := res.Header.Get("Content-Security-Policy")
	assert.Contains(t, policy, "'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='")
	assert.NotContains(t, policy, "unsafe-inline")
	assert.NotContains(t, policy, "'unsafe-eval'")
	for _, part := range []string{
		"require-trusted-types-for 'script'", "trusted-types blockfield", "frame-ancestors 'self'", "base-uri 'none'",
		"form-action 'none'", "style-src 'self'", "connect-src 'self'", "worker-src 'self'", "manifest-src 'self'",
	} {
		assert.Contains(t, strings.Split(policy, "; "), part)
	}
}

func TestNegotiation(t *testing.T) {
	t.Parallel()
	s := build(t, ingredients(t), 9)
	h := s.Handler()
	path := "/" + folder(t, s) + "engine.wasm"
	want := s.File(path[1:]).Body
	read := map[string]func(io.Reader) io.Reader{
		"":   func(r io.Reader) io.Reader { return r },
		"br": func(r io.Reader) io.Reader { return brotli.NewReader(r) },
		"gzip": func(r io.Reader) io.Reader {
			z, err := gzip.NewReader(r)
			require.NoError(t, err)
			return z
		},
	}
	for accept, encoding := range map[string]string{
		"":                           "",
		"gzip, deflate, br, zstd":    "br",
		"gzip":                       "gzip",
		"br;q=0, gzip;q=0.5":         "gzip",
		"GZIP;Q=1":                   "gzip",
		"br; q=0.1":                  "br",
		"identity":                   "",
		"br;q=0,gzip;q=0":            "",
		"brotli, x-gzip, br2;q=0.00": "",
	} {
		res := ask(t, h, "GET", path, map[string]string{"Accept-Encoding": accept})
		assert.Equal(t, encoding, res.Header.Get("Content-Encoding"), accept)
		assert.Equal(t, "Accept-Encoding", res.Header.Get("Vary"), accept)
		raw, err := io.ReadAll(res.Body)
		require.NoError(t, err)
		body, err := io.ReadAll(read[encoding](bytes.NewReader(raw)))
		require.NoError(t, err, accept)
		assert.True(t, bytes.Equal(want, body), accept)

		tag := res.Header.Get("ETag")
		same := ask(t, h, "GET", path, map[string]string{"Accept-Encoding": accept, "If-None-Match": `W/"x", ` + tag})
		assert.Equal(t, http.StatusNotModified, same.StatusCode, accept)
		assert.Empty(t, same.Header.Get("Content-Encoding"), accept)
	}
}

func TestWrite(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	stale := filepath.Join(dir, "icon.svg.br")
	require.NoError(t, os.WriteFile(stale, []byte("of an older build"), 0o644))
	s := build(t, ingredients(t), 9)
	require.NoError(t, s.Write(dir))

	written := map[string]bool{}
	require.NoError(t, fs.WalkDir(os.DirFS(dir), ".", func(name string, e fs.DirEntry, err error) error {
		if err == nil && !e.IsDir() {
			written[name] = true
		}
		return err
	}))
	wanted := map[string]bool{}
	for _, name := range s.Names() {
		f := s.File(name)
		body, err := os.ReadFile(filepath.Join(dir, name))
		require.NoError(t, err)
		assert.True(t, bytes.Equal(f.Body, body), name)
		wanted[name] = true
		if f.Brotli != nil {
			wanted[name+".br"] = true
		}
		if f.Gzip != nil {
			wanted[name+".gz"] = true
		}
	}
	assert.Equal(t, wanted, written)
}

// A site in German is so before any script has run, and says so to whoever installs it.
func TestSiteInGerman(t *testing.T) {
	in, err := web.Carried(fstest.MapFS{
		"engine.wasm": {}, "preview.wasm": {}, "wasm_exec.js": {},
	}, web.Settings{Language: "de"})
	require.NoError(t, err)
	s := build(t, in, 0)
	index := string(s.File("index.html").Body)
	for _, part := range []string{`<html lang="de"`, "Paneel für ein Wohnzimmer", ">Datei<", "726 Klötze", "Lampe schwenken"} {
		assert.Contains(t, index, part)
	}
	assert.NotContains(t, index, "⟪")
	var manifest struct{ Lang, Description string }
	require.NoError(t, json.Unmarshal(s.File("manifest.webmanifest").Body, &manifest))
	assert.Equal(t, "de", manifest.Lang)
	assert.Contains(t, manifest.Description, "Holzklötzen")
}
