package cli

import (
	"errors"
	"fmt"
	"io"
	"os"

	"blockfield/engine/design"
	"blockfield/engine/sound"
	"blockfield/engine/words"
)

// maxInput is more than any file of ours may have, so that the reader of the
// document can say that a file is too large without all of it being read.
const maxInput = 8 << 20

// streamName stands for a standard stream.
const streamName = "-"

// errNoName is said of "", which is what a shell makes of an unset variable.
var errNoName = errors.New(`"" is not the name of a file (allowed a file, or - for standard input)`)

// readInput reads a file, or standard input for "-".
func readInput(name string, s Streams) ([]byte, error) {
	if name == streamName {
		body, err := io.ReadAll(io.LimitReader(s.In, maxInput))
		if err != nil {
			return nil, fmt.Errorf("standard input: %w", err)
		}
		return body, nil
	}
	if name == "" {
		return nil, errNoName
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", words.Printable(name), cause(err))
	}
	defer f.Close()
	body, err := io.ReadAll(io.LimitReader(f, maxInput))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", words.Printable(name), cause(err))
	}
	return body, nil
}

// writeOutput writes a file whole, or standard output for "-".
func writeOutput(name string, body []byte, s Streams) error {
	if name == streamName {
		_, err := s.Out.Write(body)
		return err
	}
	if err := os.WriteFile(name, body, 0o644); err != nil {
		return fmt.Errorf("%s: %w", words.Printable(name), cause(err))
	}
	return nil
}

// cause is what went wrong with a file, without its name.
func cause(err error) error {
	if e, ok := errors.AsType[*os.PathError](err); ok {
		return e.Err
	}
	return err
}

func readDesign(name string, s Streams) (design.Document, error) {
	body, err := readInput(name, s)
	if err != nil {
		return design.Document{}, err
	}
	doc, err := design.Decode(body)
	return doc, located(name, err)
}

func readBook(name string, s Streams) (design.Book, error) {
	body, err := readInput(name, s)
	if err != nil {
		return design.Book{}, err
	}
	book, err := design.DecodeBook(body)
	return book, located(name, err)
}

func readRecord(name string, s Streams) (design.Record, error) {
	body, err := readInput(name, s)
	if err != nil {
		return design.Record{}, err
	}
	rec, err := design.DecodeRecord(body)
	return rec, located(name, err)
}

// located puts the name of the file before each fault.
func located(name string, err error) error {
	if err == nil {
		return nil
	}
	if name == streamName {
		name = "standard input"
	}
	var lines []error
	for _, f := range each(err) {
		lines = append(lines, fmt.Errorf("%s: %w", words.Printable(name), f))
	}
	return errors.Join(lines...)
}

// each is what an error joins, or the one error that it is.
func each(err error) []error {
	if faults, ok := errors.AsType[design.Faults](err); ok {
		return errorsOf(faults)
	}
	if faults, ok := errors.AsType[sound.GridFaults](err); ok {
		return errorsOf(faults)
	}
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		return joined.Unwrap()
	}
	return []error{err}
}

func errorsOf[E error](faults []E) []error {
	all := make([]error, len(faults))
	for i, f := range faults {
		all[i] = f
	}
	return all
}
