package cli

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"slices"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"blockfield/engine"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/words"
)

// gates are the points of the job that a Stop can keep shut.
func gates() []string {
	var all []string
	for _, g := range check.Gates() {
		all = append(all, string(g))
	}
	return all
}

// report prints everything that is known of a design.
func report(_ context.Context, args []string, s Streams) (int, error) {
	flags := flag.NewFlagSet("report", flag.ContinueOnError)
	prices := optionalFile(flags, "prices")
	record := optionalFile(flags, "record")
	gate := flags.String("gate", "", "")
	hear := flags.Bool("hear", false, "")
	longer := flags.Bool("longer", false, "")
	spoken := languageFlag(flags)
	today := dayFlag(flags)
	names, err := parse(flags, args)
	if err != nil {
		return badInput, err
	}
	if len(names) != 1 {
		return badInput, errUsage
	}
	if *gate != "" && !slices.Contains(gates(), *gate) {
		return badInput, fmt.Errorf("-gate: %q is not a gate (allowed %s)", *gate, strings.Join(gates(), ", "))
	}
	doc, err := readDesign(names[0], s)
	if err != nil {
		return badInput, err
	}
	book, err := pricesOn(*prices, string(*today), s)
	if err != nil {
		return badInput, err
	}
	doc, plan, err := planned(doc, book, *longer)
	if err != nil {
		return badInput, located(names[0], err)
	}
	plan = plan.On(string(*today), doc, book)
	plan, _, err = followed(plan, doc.Design, *record, string(*today), s)
	if err != nil {
		return badInput, err
	}
	reader := words.Reader{Language: spoken.or(doc.View.Language), Units: doc.View.Units}
	var heard *engine.HearingReport
	if *hear {
		hearing, err := engine.Hear(doc.Design)
		if err != nil {
			return badInput, located(names[0], err)
		}
		plan = plan.With(hearing)
		report := hearing.Report(doc.Design, reader)
		heard = &report
	}
	if err := writeJSON(s, wholeReport{plan.Report(reader), heard}); err != nil {
		return badInput, err
	}
	if len(plan.ShutAt(check.Gate(*gate))) > 0 {
		return stopped, nil
	}
	return done, nil
}

// planned is the plan of a design, with a longer search for its cutting plans where it
// is asked for. A design that holds it is of another revision.
func planned(doc design.Document, book design.Book, longer bool) (design.Document, engine.Result, error) {
	planner := engine.NewPlanner(book)
	plan, err := planner.Plan(doc.Design)
	if err != nil || !longer {
		return doc, plan, err
	}
	doc = engine.LookLonger(doc, plan)
	plan, err = planner.Plan(doc.Design)
	return doc, plan, err
}

// followed is a plan with what the record of the job answers, where there is one,
// and the job itself. A design file of an earlier program holds some of it: what the
// scales said, and what was asked.
func followed(plan engine.Result, d design.Design, name *string, today string, s Streams) (engine.Result, engine.Job, error) {
	rec := design.NewRecord()
	if name != nil {
		var err error
		if rec, err = readRecord(*name, s); err != nil {
			return engine.Result{}, engine.Job{}, err
		}
	}
	_, earlier, found := design.TakeEarlier(d)
	job := engine.Follow(d, plan, earlier.Into(rec), today)
	if found || name != nil {
		plan = plan.During(job)
	}
	return plan, job, nil
}

// pricesOn reads the price book of a report, or takes the example figures where
// none is named. A book that does not hold on the day is said on standard error
// as well as in the report: whoever keeps the report may look at its figures only.
func pricesOn(name *string, today string, s Streams) (design.Book, error) {
	if name == nil {
		return design.DefaultBook(), nil
	}
	book, err := readBook(*name, s)
	if err != nil {
		return design.Book{}, err
	}
	if err := located(*name, design.HoldsOn(book, today)); err != nil {
		complain(s, err)
	}
	return book, nil
}

// optionalFile is a flag that names a file; nil: not given, which an empty name
// is not.
func optionalFile(flags *flag.FlagSet, name string) **string {
	var file *string
	flags.Func(name, "", func(text string) error {
		file = &text
		return nil
	})
	return &file
}

// wholeReport is a Plan's report, with that of a Hearing if it was asked for.
type wholeReport struct {
	engine.Report
	Sound *engine.HearingReport `json:"sound,omitempty"`
}

func writeJSON(s Streams, v any) error {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(v); err != nil {
		return err
	}
	_, err := s.Out.Write(escaped(b.Bytes()))
	return err
}

// escaped writes characters that do not print by their numbers, which JSON takes
// for the same: what a file holds may not steer the reader's terminal.
func escaped(body []byte) []byte {
	out := make([]byte, 0, len(body))
	for _, r := range string(body) {
		if r == '\n' || words.Printable(string(r)) == string(r) {
			out = utf8.AppendRune(out, r)
			continue
		}
		for _, unit := range utf16.Encode([]rune{r}) {
			out = fmt.Appendf(out, `\u%04x`, unit)
		}
	}
	return out
}
