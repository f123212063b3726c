package cli

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"slices"
	"strings"

	"blockfield/engine"
	"blockfield/engine/check"
	"blockfield/engine/words"
)

// gates are the points of the job that a Stop can keep shut.
func gates() []string {
	return []string{
		string(check.Offer), string(check.Share), string(check.Buy),
		string(check.Cut), string(check.Glue), string(check.Hang),
	}
}

// report prints everything that is known of a design.
func report(_ context.Context, args []string, s Streams) (int, error) {
	flags := flag.NewFlagSet("report", flag.ContinueOnError)
	prices := flags.String("prices", "", "")
	gate := flags.String("gate", "", "")
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
	book, err := readBook(*prices, s)
	if err != nil {
		return badInput, err
	}
	plan, err := engine.Plan(doc.Design, book)
	if err != nil {
		return badInput, fmt.Errorf("%s: %w", names[0], err)
	}
	reader := words.Reader{Language: words.English(), Units: doc.View.Units}
	if err := writeJSON(s, plan.Report(reader)); err != nil {
		return badInput, err
	}
	if shut(plan.WatchOuts, check.Gate(*gate)) {
		return stopped, nil
	}
	return done, nil
}

// shut reports whether a Stop stands at the gate that was asked for.
func shut(all []check.WatchOut, gate check.Gate) bool {
	return gate != check.NoGate && slices.ContainsFunc(all, func(w check.WatchOut) bool {
		return w.Level == check.Stop && w.Gate == gate
	})
}

func writeJSON(s Streams, v any) error {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(v); err != nil {
		return err
	}
	_, err := s.Out.Write(b.Bytes())
	return err
}
