package cli

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"net/mail"
	"strings"

	"blockfield/cmd/blockfield/web"
	"blockfield/engine/words"
	"blockfield/site"
)

// Effort of compression: 9 takes about a second for the whole site, 11 is about
// an eighth smaller and takes half a minute.
const (
	quickBrotli = 9
	maxBrotli   = 11
)

var errNoModules = errors.New("this program was built without the page's modules: build it with make")

// build writes the site into a folder.
func build(_ context.Context, args []string, s Streams) (int, error) {
	flags := flag.NewFlagSet("build", flag.ContinueOnError)
	out := flags.String("o", "", "")
	brotli := flags.Int("brotli", quickBrotli, "")
	write := flags.String("write-to", "", "")
	language := languageFlag(flags)
	rest, err := parse(flags, args)
	if err != nil {
		return badInput, err
	}
	if len(rest) > 0 || *out == "" || *out == streamName {
		return badInput, errUsage
	}
	if *brotli < 0 || *brotli > maxBrotli {
		return badInput, fmt.Errorf("-brotli: %d is out of range (allowed 0, no compression, to %d)", *brotli, maxBrotli)
	}
	built, err := buildSite(*brotli, *write, language.or("en"))
	if err != nil {
		return badInput, err
	}
	if err := built.Write(*out); err != nil {
		return badInput, err
	}
	fmt.Fprintf(s.Out, "%s: the page, %d files\n", words.Printable(*out), len(built.Names()))
	return done, nil
}

// buildSite makes the site of what this program carries. workshop is the mail address
// that clients write to; empty: there is none. The page begins in language.
func buildSite(brotli int, workshop string, language words.Language) (*web.Site, error) {
	if workshop != "" && !isAddress(workshop) {
		return nil, fmt.Errorf("-write-to: %q is no mail address (allowed NAME@HOST, without a name before it)", workshop)
	}
	modules, ok := site.Modules()
	if !ok {
		return nil, errNoModules
	}
	in, err := web.Carried(modules, workshop, language)
	if err != nil {
		return nil, err
	}
	return web.Build(in, web.Options{Brotli: brotli})
}

// isAddress reports whether text is a plain mail address that a link can begin a mail to:
// by RFC 5322, and without what would end the address in a link (RFC 6068).
func isAddress(text string) bool {
	a, err := mail.ParseAddress(text)
	return err == nil && a.Address == text && strings.Count(text, "@") == 1 && !strings.ContainsAny(text, "\"%?&#<>,; ")
}
