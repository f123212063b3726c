package web

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"runtime"
	"sync"

	"github.com/andybalholm/brotli"
)

// smallest is the size below which compression saves no packet.
const smallest = 1024

// widest is the window that every decoder has to have, in bits (RFC 7932): modules are
// larger than the one that is taken by itself.
const widest = 24

// compress adds the .br and .gz forms of every file that gets smaller by them.
func (s *Site) compress(effort int) error {
	var wg sync.WaitGroup
	slots := make(chan struct{}, runtime.GOMAXPROCS(0))
	faults := make(chan error, len(s.files))
	for name, f := range s.files {
		if len(f.Body) < smallest || f.Type == "image/jpeg" || f.Type == "image/png" {
			continue
		}
		wg.Go(func() {
			slots <- struct{}{}
			defer func() { <-slots }()
			if err := f.compress(effort); err != nil {
				faults <- fmt.Errorf("build: %s: %w", name, err)
			}
		})
	}
	wg.Wait()
	close(faults)
	return <-faults
}

func (f *File) compress(effort int) error {
	var err error
	f.Brotli, err = smaller(f.Body, func(w io.Writer) (io.WriteCloser, error) {
		return brotli.NewWriterOptions(w, brotli.WriterOptions{Quality: effort, LGWin: widest}), nil
	})
	if err != nil {
		return err
	}
	f.Gzip, err = smaller(f.Body, func(w io.Writer) (io.WriteCloser, error) {
		return gzip.NewWriterLevel(w, gzip.BestCompression)
	})
	return err
}

// smaller is the compressed body, or nil where that is no smaller.
func smaller(body []byte, compressor func(io.Writer) (io.WriteCloser, error)) ([]byte, error) {
	var b bytes.Buffer
	w, err := compressor(&b)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(body); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	if b.Len() >= len(body) {
		return nil, nil
	}
	return b.Bytes(), nil
}
