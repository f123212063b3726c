package cli

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"time"

	"blockfield/engine/bench"
	"blockfield/engine/design"
	"blockfield/engine/words"
)

// checkFiles reads every file and says what each is, or what is wrong with it.
func checkFiles(_ context.Context, args []string, s Streams) (int, error) {
	flags := flag.NewFlagSet("check", flag.ContinueOnError)
	today := dayFlag(flags)
	names, err := parse(flags, args)
	if err != nil {
		return badInput, err
	}
	if len(names) == 0 {
		return badInput, errUsage
	}
	var faults []error
	for _, name := range names {
		verdict, err := checkFile(name, string(*today), s)
		if err != nil {
			faults = append(faults, err)
			continue
		}
		fmt.Fprintf(s.Out, "%s: %s\n", words.Printable(name), verdict)
	}
	return done, errors.Join(faults...)
}

// checkFile tells the kinds of files apart by what they say of themselves. A
// price book is also held against what jobs count by, and books of either kind
// against a day.
func checkFile(name, today string, s Streams) (string, error) {
	body, err := readInput(name, s)
	if err != nil {
		return "", err
	}
	switch design.FormatOf(body) {
	case design.BookFormat:
		book, err := design.DecodeBook(body)
		if err != nil {
			return "", located(name, err)
		}
		err = errors.Join(located(name, bench.Counted(book.Tasks)), located(name, design.HoldsOn(book, today)))
		return "good price book, code " + book.Code(), err
	case design.SellingFormat:
		book, err := design.DecodeSelling(body)
		if err == nil {
			err = design.SellingHoldsOn(book, today)
		}
		return "good selling book", located(name, err)
	case design.RecordFormat:
		_, err := design.DecodeRecord(body)
		return "good job record", located(name, err)
	case design.LetterFormat:
		l, doc, err := design.DecodeLetter(body)
		return "good letter of a " + l.From + ", revision " + doc.Design.Revision(), located(name, err)
	case settingsFormat:
		_, err := settingsIn(name, body, s)
		return "good settings of a site", err
	default:
		doc, err := design.Decode(body)
		return "good design file, revision " + doc.Design.Revision(), located(name, err)
	}
}

// day is a flag that takes a day of the calendar.
type day string

// dayFlag is the day that dates are held against: the one of this machine, so
// that no book that has run out passes unnoticed, unless another is given.
func dayFlag(flags *flag.FlagSet) *day {
	d := day(time.Now().Format(time.DateOnly))
	flags.Var(&d, "today", "")
	return &d
}

func (d *day) String() string { return string(*d) }

// Set reads the day as files write it.
func (d *day) Set(text string) error {
	if !design.IsDate(text) {
		return errors.New("not a day (allowed such as 2026-03-31)")
	}
	*d = day(text)
	return nil
}
