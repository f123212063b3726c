package cli

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"path/filepath"

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
	settings := flags.String("settings", "", "")
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
	built, err := buildSite(*brotli, *settings, s)
	if err != nil {
		return badInput, err
	}
	if err := built.Write(*out); err != nil {
		return badInput, err
	}
	fmt.Fprintf(s.Out, "%s: the page, %d files\n", words.Printable(*out), len(built.Names()))
	return done, nil
}

// buildSite makes the site of what this program carries, and of what the settings file of
// a workshop says, if there is one.
func buildSite(brotli int, settingsName string, s Streams) (*web.Site, error) {
	settings, err := settingsOf(settingsName, s)
	if err != nil {
		return nil, err
	}
	modules, ok := site.Modules()
	if !ok {
		return nil, errNoModules
	}
	in, err := web.Carried(modules, settings)
	if err != nil {
		return nil, err
	}
	return web.Build(in, web.Options{Brotli: brotli})
}

// settingsOf reads a settings file; none where there is no name.
func settingsOf(name string, s Streams) (web.Settings, error) {
	if name == "" {
		return web.Settings{}, nil
	}
	body, err := readInput(name, s)
	if err != nil {
		return web.Settings{}, err
	}
	return settingsIn(name, body, s)
}

// settingsIn reads the body of a settings file. What it names lies beside it.
func settingsIn(name string, body []byte, s Streams) (web.Settings, error) {
	beside := func(other string) ([]byte, error) {
		if !filepath.IsAbs(other) {
			other = filepath.Dir(name) + string(filepath.Separator) + other
		}
		return readInput(other, s)
	}
	settings, err := readSettings(body, beside)
	return settings, located(name, err)
}
