package cli

import (
	"context"
	"errors"
	"flag"
	"fmt"

	"blockfield/engine/design"
)

// checkFiles reads every file and says what each is, or what is wrong with it.
func checkFiles(_ context.Context, args []string, s Streams) (int, error) {
	names, err := parse(flag.NewFlagSet("check", flag.ContinueOnError), args)
	if err != nil {
		return badInput, err
	}
	if len(names) == 0 {
		return badInput, errUsage
	}
	var faults []error
	for _, name := range names {
		verdict, err := checkFile(name, s)
		if err != nil {
			faults = append(faults, err)
			continue
		}
		fmt.Fprintf(s.Out, "%s: %s\n", name, verdict)
	}
	return done, errors.Join(faults...)
}

func checkFile(name string, s Streams) (string, error) {
	body, err := readInput(name, s)
	if err != nil {
		return "", err
	}
	if isBook(body) {
		book, err := design.DecodeBook(body)
		return "good price book, code " + book.Code(), located(name, err)
	}
	doc, err := design.Decode(body)
	return "good design file, revision " + doc.Design.Revision(), located(name, err)
}
