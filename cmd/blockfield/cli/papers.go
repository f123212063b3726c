package cli

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"image/jpeg"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/scene"
	"blockfield/engine/words"
	"blockfield/site"
)

// archive is the file that holds all others of an export.
const archive = "papers.zip"

// writePapers writes the papers of a design into a folder.
func writePapers(_ context.Context, args []string, s Streams) (int, error) {
	flags := flag.NewFlagSet("papers", flag.ContinueOnError)
	prices := optionalFile(flags, "prices")
	record := optionalFile(flags, "record")
	out := flags.String("o", "", "")
	paper := flags.String("paper", "", "")
	set := flags.String("set", "", "")
	pictured := flags.Bool("picture", false, "")
	longer := flags.Bool("longer", false, "")
	address := flags.String("site", "", "")
	spoken := languageFlag(flags)
	today := dayFlag(flags)
	names, err := parse(flags, args)
	if err != nil {
		return badInput, err
	}
	if len(names) != 1 || *out == "" || *out == streamName {
		return badInput, errUsage
	}
	format, ok := sheet.Named(*paper)
	if !ok && *paper != "" {
		return badInput, fmt.Errorf("-paper: %s is no size of paper (allowed %s)", strconv.Quote(*paper), paperNames())
	}
	if *address != "" && !papers.IsSite(*address) {
		return badInput, fmt.Errorf("-site: %s is no address of a site (allowed http:// or https:// with a host, without ? and #, 80 letters at most)", strconv.Quote(*address))
	}
	in, err := papersInput(names[0], *prices, *record, string(*today), *longer, format, s)
	if err != nil {
		return badInput, err
	}
	if *paper == "" {
		in.Format = sheet.UsualFor(in.Doc.View.Units)
	}
	in.Site = *address
	in.Words.Language = spoken.or(in.Doc.View.Language)
	for _, lines := range page.SlipChanges(page.Input{Doc: in.Doc, Plan: in.Plan, Job: in.Job, Book: in.Book, Today: in.Today, Words: in.Words}) {
		in.Changed = append(in.Changed, papers.Changes(lines))
	}
	sets, err := setsOf(in, *set)
	if err != nil {
		return badInput, err
	}
	if *pictured {
		if in.Picture, err = paperPicture(in.Doc); err != nil {
			return badInput, located(names[0], err)
		}
	}
	fonts := site.Fonts()
	files := papers.Files(in, sets, papers.Fonts{Regular: fonts[site.RegularFont], Bold: fonts[site.BoldFont]})
	return done, writeFiles(*out, files, s)
}

// papersInput reads a design with its prices and its record, planned as of a day.
func papersInput(name string, prices, record *string, today string, longer bool, format sheet.Format, s Streams) (papers.Input, error) {
	doc, err := readDesign(name, s)
	if err != nil {
		return papers.Input{}, err
	}
	book, err := pricesOn(prices, today, s)
	if err != nil {
		return papers.Input{}, err
	}
	doc, plan, err := planned(doc, book, longer)
	if err != nil {
		return papers.Input{}, located(name, err)
	}
	heard, err := engine.Hear(doc.Design)
	if err != nil {
		return papers.Input{}, located(name, err)
	}
	plan, job, err := followed(plan.On(today, doc, book), doc.Design, record, today, s)
	if err != nil {
		return papers.Input{}, err
	}
	var looks []engine.Result
	for _, look := range doc.Looks {
		r, err := engine.Plan(look.Design, book)
		if err != nil {
			return papers.Input{}, located(name, err)
		}
		looks = append(looks, r)
	}
	return papers.Input{
		Looks: looks,
		Doc:   doc, Plan: plan, Job: job, Book: book, Heard: &heard, Today: today, Format: format,
		Words: words.Reader{Units: doc.View.Units},
	}, nil
}

// Size and quality of the picture on an offer: half a page wide at 200 dots an inch.
const (
	paperPictureWidth   = 800
	paperPictureHeight  = 600
	paperPictureQuality = 90
)

// paperPicture draws a design for its offer, as its view has it.
func paperPicture(doc design.Document) (papers.Picture, error) {
	sc, _, err := sceneOf(doc)
	if err != nil {
		return papers.Picture{}, err
	}
	var b bytes.Buffer
	err = jpeg.Encode(&b, scene.Render(sc, paperPictureWidth, paperPictureHeight, pictureSupersample), &jpeg.Options{Quality: paperPictureQuality})
	return papers.Picture{Type: "image/jpeg", Body: b.Bytes(), Width: paperPictureWidth, Height: paperPictureHeight}, err
}

// setsOf are the sets to write: one of a name, or else all that the builder of the
// design has.
func setsOf(in papers.Input, name string) ([]string, error) {
	reader := papers.Maker
	if in.Doc.Design.Work.OwnBuild {
		reader = papers.Builder
	}
	all := papers.For(reader, in.Doc.Design.Work.Scope(), in.Job.Record.Lock != nil)
	if name == "" {
		return all, nil
	}
	if !slices.Contains(all, name) {
		return nil, fmt.Errorf("-set: %s is no set of papers of this design (allowed %s)", strconv.Quote(name), strings.Join(all, ", "))
	}
	return []string{name}, nil
}

func paperNames() string {
	var all []string
	for _, f := range sheet.Formats() {
		all = append(all, f.Name)
	}
	return strings.Join(all, ", ")
}

// writeFiles writes files below a folder, which is made where it is missing, and
// the archive of all of them.
func writeFiles(dir string, files []papers.File, s Streams) error {
	packed, err := papers.Zip(files)
	if err != nil {
		return err
	}
	for _, f := range append(files, papers.File{Name: archive, Body: packed}) {
		to := filepath.Join(dir, filepath.FromSlash(f.Name))
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			return fmt.Errorf("%s: %w", words.Printable(dir), cause(err))
		}
		if err := writeOutput(to, f.Body, s); err != nil {
			return err
		}
	}
	fmt.Fprintf(s.Out, "%s: %d files, and all of them in %s\n", words.Printable(dir), len(files), archive)
	return nil
}
