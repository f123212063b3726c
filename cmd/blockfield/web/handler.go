package web

import (
	"crypto/sha256"
	"encoding/hex"
	"maps"
	"net/http"
	"strconv"
	"strings"
)

// Handler serves the site from memory.
func (s *Site) Handler() http.Handler {
	answers := map[string]*answer{}
	for name, f := range s.files {
		answers["/"+name] = newAnswer(f)
	}
	answers["/"] = answers["/index.html"]
	common := s.headers()
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		maps.Copy(w.Header(), common)
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			w.Header().Set("Allow", "GET, HEAD")
			http.Error(w, "only GET and HEAD are answered here", http.StatusMethodNotAllowed)
			return
		}
		a, ok := answers[r.URL.Path]
		if !ok {
			w.Header().Set("Cache-Control", askAgain)
			http.Error(w, "there is no such file", http.StatusNotFound)
			return
		}
		a.serve(w, r)
	})
}

// answer is a file with what is known beforehand about sending it.
type answer struct {
	file *File
	tag  string
}

func newAnswer(f *File) *answer {
	sum := sha256.Sum256(f.Body)
	return &answer{f, hex.EncodeToString(sum[:8])}
}

func (a *answer) serve(w http.ResponseWriter, r *http.Request) {
	body, encoding := a.choose(r.Header.Get("Accept-Encoding"))
	tag := `"` + a.tag + encoding + `"`
	h := w.Header()
	h.Set("Content-Type", a.file.Type)
	h.Set("Cache-Control", askAgain)
	if a.file.Keep {
		h.Set("Cache-Control", keepForEver)
	}
	h.Set("ETag", tag)
	if a.file.Brotli != nil || a.file.Gzip != nil {
		h.Set("Vary", "Accept-Encoding")
	}
	if strings.Contains(r.Header.Get("If-None-Match"), tag) {
		w.WriteHeader(http.StatusNotModified)
		return
	}
	if encoding != "" {
		h.Set("Content-Encoding", encoding)
	}
	h.Set("Content-Length", strconv.Itoa(len(body)))
	if r.Method == http.MethodHead {
		return
	}
	w.Write(body) // a reader that went away is not our fault
}

// choose picks the smallest form that the reader takes.
func (a *answer) choose(accept string) (body []byte, encoding string) {
	if a.file.Brotli != nil && accepts(accept, "br") {
		return a.file.Brotli, "br"
	}
	if a.file.Gzip != nil && accepts(accept, "gzip") {
		return a.file.Gzip, "gzip"
	}
	return a.file.Body, ""
}

// accepts reads an Accept-Encoding header: a list of names, each with a weight
// that means "not at all" when it is 0.
func accepts(header, encoding string) bool {
	for part := range strings.SplitSeq(header, ",") {
		name, weight, _ := strings.Cut(part, ";")
		if !strings.EqualFold(strings.TrimSpace(name), encoding) {
			continue
		}
		q, weighted := strings.CutPrefix(strings.TrimSpace(weight), "q=")
		if !weighted {
			return true
		}
		v, err := strconv.ParseFloat(q, 64)
		return err == nil && v > 0
	}
	return false
}
