package main_test

import (
	"net/http"
	"strings"
	"sync"
)

// gate holds back requests for a file until it is opened.
type gate struct {
	next   http.Handler
	suffix string

	mu   sync.Mutex
	free chan struct{}
}

func newGate(next http.Handler, suffix string) *gate {
	return &gate{next: next, suffix: suffix, free: make(chan struct{})}
}

func (g *gate) open() {
	g.mu.Lock()
	defer g.mu.Unlock()
	close(g.free)
}

func (g *gate) shut() {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.free = make(chan struct{})
}

func (g *gate) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	if strings.HasSuffix(r.URL.Path, g.suffix) {
		g.mu.Lock()
		free := g.free
		g.mu.Unlock()
		select {
		case <-free:
		case <-r.Context().Done():
			panic(http.ErrAbortHandler) // no answer rather than an empty one
		}
	}
	g.next.ServeHTTP(w, r)
}
