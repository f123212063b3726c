package cli

import (
	"errors"
	"fmt"
	"math"
	"net/mail"
	"net/url"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/go-json-experiment/json"

	"blockfield/cmd/blockfield/web"
	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/words"
)

// The limits of what a settings file holds.
const (
	settingsFormat = "blockfield site"
	maxNameRunes   = 60
	maxNoteRunes   = 200
	maxNotes       = 8
	maxFrames      = 16
	maxAddress     = 500
)

// settingsFile is the file as it is written.
type settingsFile struct {
	Format  string `json:"format"`
	Version int    `json:"version"`

	Name       *string      `json:"name"`
	Logo       *schemes     `json:"logo"`
	NameInLogo bool         `json:"nameInLogo"`
	Icon       *string      `json:"icon"`
	Accent     *schemes     `json:"accent"`
	Language   *string      `json:"language"`
	WriteTo    *string      `json:"writeTo"`
	Prices     *string      `json:"prices"`
	Footer     []footerLine `json:"footer"`
	Frames     *[]string    `json:"frames"`
}

// schemes is what differs between light and dark paper.
type schemes struct {
	Light *string `json:"light"`
	Dark  *string `json:"dark"`
}

type footerLine struct {
	Text    string `json:"text"`
	Address string `json:"address"`
}

// reading is a settings file while it is read: all that is wrong is said at once.
type reading struct {
	open   func(name string) ([]byte, error)
	faults []error
}

func (r *reading) fault(path, format string, args ...any) {
	r.faults = append(r.faults, fmt.Errorf("%s: %s", path, fmt.Sprintf(format, args...)))
}

// readSettings reads a settings file. open reads the files that it names. Of a price book
// it keeps the selling book alone: what a workshop earns enters no site.
func readSettings(body []byte, open func(name string) ([]byte, error)) (web.Settings, error) {
	var file settingsFile
	if err := json.Unmarshal(body, &file, json.RejectUnknownMembers(true)); err != nil {
		return web.Settings{}, jsonFault(err, "the settings of a site")
	}
	if file.Format != settingsFormat || file.Version != 1 {
		return web.Settings{}, fmt.Errorf("format, version: %q, %d is no settings file (allowed %q, 1)", file.Format, file.Version, settingsFormat)
	}
	r := &reading{open: open}
	s := web.Settings{
		Name: r.text("name", file.Name, maxNameRunes), NameInLogo: file.NameInLogo,
		Accent: r.accent(file.Accent), Language: r.language(file.Language), WriteTo: r.writeTo(file.WriteTo),
		Selling: r.prices(file.Prices), Footer: r.footer(file.Footer), Frames: r.frames(file.Frames),
	}
	s.Logo, s.DarkLogo = r.logo(file.Logo)
	s.Icon = r.icon(file.Icon)
	if s.NameInLogo && (file.Logo == nil || file.Name == nil) {
		r.fault("nameInLogo", "true without a name and a logo (allowed where both are given)")
	}
	return s, errors.Join(r.faults...)
}

// text is one line of a text that is shown.
func (r *reading) text(path string, text *string, most int) string {
	if text == nil {
		return ""
	}
	n := utf8.RuneCountInString(*text)
	code, place := words.Unseen(*text, false)
	switch {
	case strings.TrimSpace(*text) == "" || n > most:
		r.fault(path, "%s has %d characters (allowed 1 to %d)", quoted(*text), n, most)
	case code != "":
		r.fault(path, "%s has the character %s, which cannot be seen, as its %d. (allowed characters that can be seen)", quoted(*text), code, place)
	}
	return *text
}

func (r *reading) language(tag *string) string {
	switch {
	case tag == nil:
		return ""
	case !slices.Contains(words.Tags(), *tag):
		r.fault("language", "%s is no language of ours (allowed %s)", quoted(*tag), strings.Join(words.Tags(), ", "))
	}
	return *tag
}

func (r *reading) writeTo(address *string) string {
	switch {
	case address == nil:
		return ""
	case !isMailAddress(*address):
		r.fault("writeTo", "%s is no mail address (allowed NAME@HOST, without a name before it)", quoted(*address))
	}
	return *address
}

// isMailAddress reports whether text is a plain mail address that a link can begin a mail
// to: by RFC 5322, and without what would end the address in a link (RFC 6068).
func isMailAddress(text string) bool {
	a, err := mail.ParseAddress(text)
	return err == nil && a.Address == text && strings.Count(text, "@") == 1 && !strings.ContainsAny(text, "\"%?&#<>,; ")
}

// prices is the selling book that the site quotes by. Out of a price book one is made;
// nothing else of it is kept.
func (r *reading) prices(name *string) *design.SellingBook {
	if name == nil {
		return nil
	}
	body, ok := r.file("prices", *name)
	if !ok {
		return nil
	}
	selling, err := sellingOf(body)
	if err == nil {
		return &selling
	}
	for _, f := range each(err) {
		r.fault("prices", "%s: %v", quoted(*name), f)
	}
	return nil
}

// sellingOf reads a selling book, or makes one of a price book.
func sellingOf(body []byte) (design.SellingBook, error) {
	switch design.FormatOf(body) {
	case design.SellingFormat:
		return design.DecodeSelling(body)
	case design.BookFormat:
		book, err := design.DecodeBook(body)
		if err != nil {
			return design.SellingBook{}, err
		}
		return engine.SellingBook(book)
	}
	return design.SellingBook{}, errors.New("holds no prices (allowed a selling book or a price book)")
}

// file reads a file that the settings name.
func (r *reading) file(path, name string) ([]byte, bool) {
	if name == "" {
		r.fault(path, `"" is not the name of a file`)
		return nil, false
	}
	body, err := r.open(name)
	if err != nil {
		r.fault(path, "%v", err)
	}
	return body, err == nil
}

// picture reads a picture that the settings name.
func (r *reading) picture(path string, name *string) *web.Image {
	if name == nil {
		return nil
	}
	body, ok := r.file(path, *name)
	if !ok {
		return nil
	}
	picture, err := web.ReadImage(body)
	if err != nil {
		r.fault(path, "%s %v", quoted(*name), err)
	}
	return &picture
}

// leastIcon is the side that browsers ask of an icon before they install a page.
const leastIcon = 192

// icon is a picture that stands for the site on a screen.
func (r *reading) icon(name *string) *web.Image {
	i := r.picture("icon", name)
	switch {
	case i == nil:
	case i.Width != i.Height:
		r.fault("icon", "%s is %v × %v (allowed a square)", quoted(*name), i.Width, i.Height)
	case i.Suffix == ".png" && i.Width < leastIcon, i.Suffix == ".jpg":
		r.fault("icon", "%s is a %s of %v pixels (allowed an SVG, or a PNG of %d pixels or more)", quoted(*name), strings.ToUpper(i.Suffix[1:]), i.Width, leastIcon)
	}
	return i
}

// logo is what stands in the head of the page: on light paper, and on dark where another
// is given.
func (r *reading) logo(file *schemes) (light, dark *web.Image) {
	if file == nil {
		return nil, nil
	}
	if file.Light == nil {
		r.fault("logo.light", "is missing")
	}
	return r.picture("logo.light", file.Light), r.picture("logo.dark", file.Dark)
}

// accent is the colour of what can be done. It is written on the papers of the page, and
// so has to stand out from them.
func (r *reading) accent(file *schemes) *web.Accent {
	if file == nil {
		return nil
	}
	return &web.Accent{
		Light: r.colour("accent.light", file.Light, "light", web.LightPapers),
		Dark:  r.colour("accent.dark", file.Dark, "dark", web.DarkPapers),
	}
}

func (r *reading) colour(path string, text *string, scheme string, papers []string) web.Colour {
	if text == nil {
		r.fault(path, "is missing")
		return web.Colour{}
	}
	c, ok := web.ParseColour(*text)
	if !ok {
		r.fault(path, "%s is no colour (allowed like \"#7b4a20\")", quoted(*text))
		return c
	}
	if paper, ratio := c.Worst(papers); ratio < web.LeastContrast {
		r.fault(path, "%s stands out from the page's %s paper %s by %.2f to 1 (allowed %.1f to 1 or more)", quoted(*text), scheme, paper, math.Floor(ratio*100)/100, web.LeastContrast)
	}
	return c
}

func (r *reading) footer(lines []footerLine) []page.Note {
	if len(lines) > maxNotes {
		r.fault("footer", "%d lines (allowed up to %d)", len(lines), maxNotes)
		return nil
	}
	var all []page.Note
	for i, l := range lines {
		path := fmt.Sprintf("footer[%d]", i)
		r.text(path+".text", &l.Text, maxNoteRunes)
		if l.Address != "" && !isAddress(l.Address, "https", "http", "mailto") {
			r.fault(path+".address", "%s is no address to go to (allowed https://…, http://… or mailto:…, up to %d characters)", quoted(l.Address), maxAddress)
		}
		all = append(all, page.Note{Text: l.Text, Address: l.Address})
	}
	return all
}

// isAddress reports whether text is a whole address of one of the schemes.
func isAddress(text string, schemes ...string) bool {
	u, err := url.Parse(text)
	if err != nil || len(text) > maxAddress || !slices.Contains(schemes, u.Scheme) || u.User != nil {
		return false
	}
	if code, _ := words.Unseen(text, false); code != "" || strings.ContainsAny(text, " \"<>") {
		return false
	}
	if u.Scheme == "mailto" {
		return isMailAddress(u.Opaque) && u.RawQuery == ""
	}
	return u.Hostname() != "" && u.Opaque == ""
}

func (r *reading) frames(origins *[]string) *[]string {
	if origins == nil {
		return nil
	}
	if len(*origins) > maxFrames {
		r.fault("frames", "%d addresses (allowed up to %d)", len(*origins), maxFrames)
	}
	for i, o := range *origins {
		if !isOrigin(o) {
			r.fault(fmt.Sprintf("frames[%d]", i), "%s is no origin (allowed like https://www.example.org, without a path)", quoted(o))
		}
	}
	return origins
}

// isOrigin reports whether text is an origin as a content policy names one: scheme and
// host, no more. What would begin another directive is none.
func isOrigin(text string) bool {
	u, err := url.Parse(text)
	if err != nil || !isAddress(text, "https", "http") {
		return false
	}
	return text == u.Scheme+"://"+u.Host && strings.Trim(strings.ToLower(u.Host), "abcdefghijklmnopqrstuvwxyz0123456789.-:") == ""
}
