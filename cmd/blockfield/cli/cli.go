// Package cli is the command line of Blockfield: it reads files and flags,
// calls the engine and writes what it says. It computes nothing itself.
//
// Every command takes "-" for standard input or output. It ends with 0 when the
// work is done, 1 when it is done and something stands in the way of a gate,
// and 2 for bad use or bad input; what is wrong is said on standard error, one
// line each, as "file: path: what is wrong (allowed …)".
package cli

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"

	"blockfield/engine/words"
)

// The exit codes.
const (
	done     = 0
	stopped  = 1
	badInput = 2
)

// Streams are the standard streams of a run.
type Streams struct {
	In  io.Reader
	Out io.Writer
	Err io.Writer
}

// command is one of the commands.
type command struct {
	name  string
	usage string // what follows the name
	what  string
	run   func(ctx context.Context, args []string, s Streams) (int, error)
}

// commands are in the order of the usage.
func commands() []command {
	return []command{
		{"serve", "[-addr 127.0.0.1:8080] [-settings FILE]", "serve the page, with strict headers", serve},
		{"build", "-o DIR [-brotli 9] [-settings FILE]", "write the page as static files", build},
		{"report", "DESIGN [-prices BOOK] [-record RECORD] [-hear] [-longer] [-gate GATE] [-language TAG] [-today DATE]", "print everything that is known of a design, as JSON; with -hear also its sound, with -longer out of a longer search for its cutting plans", report},
		{"papers", "DESIGN -o DIR [-prices BOOK] [-record RECORD] [-paper A4|Letter] [-set SET] [-picture] [-longer] [-site ADDRESS] [-language TAG] [-today DATE]", "write the papers of a design: sheets to print, drawings and tables, and all of them in one archive", writePapers},
		{"picture", "DESIGN -o FILE.png [-size 1600x1200] [-view VIEW] [-light LIGHT] [-lamp AZ,EL] [-camera YAW,PITCH,ZOOM]", "draw a design", picture},
		{"cut", "PROBLEM.json [-more BOARDS] [-steps N]", "plan how to cut pieces from bars", cutBars},
		{"scatter", "HEIGHTS.csv -pitch 40mm [-gap 0mm] [-plane across|down|hemisphere] [-incidence DEG|random] [-bands 100:10000] [-temperature 20 | -c 343] [-phase kirchhoff|grating|grating-oblique]", "print what any grid of heights does to sound, as JSON", scatter},
		{"check", "[-today DATE] FILE…", "check design files, price books, selling books, job records, letters and settings of a site", checkFiles},
	}
}

// errUsage asks for the usage of the command to be shown.
var errUsage = errors.New("usage")

// Run runs one command line, without the name of the program, and returns its
// exit code. It ends early when ctx does.
func Run(ctx context.Context, args []string, s Streams) int {
	if len(args) == 0 {
		usage(s.Err)
		return badInput
	}
	if args[0] == "help" || args[0] == "-h" || args[0] == "-help" || args[0] == "--help" {
		usage(s.Out)
		return done
	}
	for _, c := range commands() {
		if c.name == args[0] {
			return c.do(ctx, args[1:], s)
		}
	}
	fmt.Fprintf(s.Err, "blockfield: %q is not a command (allowed %s)\n", args[0], names())
	return badInput
}

func (c command) do(ctx context.Context, args []string, s Streams) int {
	code, err := c.run(ctx, args, s)
	switch {
	case errors.Is(err, flag.ErrHelp):
		fmt.Fprintf(s.Out, "blockfield %s %s\n", c.name, c.usage)
		return done
	case errors.Is(err, errUsage):
		fmt.Fprintf(s.Err, "usage: blockfield %s %s\n", c.name, c.usage)
		return badInput
	case err != nil:
		complain(s, err)
		return badInput
	}
	return code
}

// complain says what is wrong, one fault a line. Faults repeat what files and
// arguments hold, which may not steer the terminal.
func complain(s Streams, err error) {
	for line := range strings.Lines(err.Error()) {
		fmt.Fprintln(s.Err, words.Printable(strings.TrimSuffix(line, "\n")))
	}
}

func usage(w io.Writer) {
	fmt.Fprint(w, "Blockfield designs, counts, prices and draws wooden block sound diffusers.\n\n")
	for _, c := range commands() {
		fmt.Fprintf(w, "  blockfield %s %s\n        %s\n", c.name, c.usage, c.what)
	}
	fmt.Fprint(w, "\n\"-\" is standard input or output. Exit codes: 0 done, 1 done but a Stop stands at the\n"+
		"gate that was asked for or at one before it, 2 bad use or bad input. The gates, in the\n"+
		"order of the job: "+strings.Join(gates(), ", ")+".\n")
}

func names() string {
	var all []string
	for _, c := range commands() {
		all = append(all, c.name)
	}
	return strings.Join(all, ", ")
}

// parse reads flags and arguments in any order and returns the arguments.
// What the flag package would print itself becomes the error.
func parse(flags *flag.FlagSet, args []string) ([]string, error) {
	flags.SetOutput(io.Discard)
	flags.Usage = func() {}
	var rest []string
	for {
		if err := flags.Parse(args); err != nil {
			return nil, err
		}
		if flags.NArg() == 0 {
			return rest, nil
		}
		rest = append(rest, flags.Arg(0))
		args = flags.Args()[1:]
	}
}
