package web

import (
	"blockfield/engine/design"
	"blockfield/engine/page"
)

// Settings are what a workshop says of a site of its own. The zero ones are of nobody's
// site, in English.
type Settings struct {
	Name       string // of the workshop
	NameInLogo bool   // which need not stand beside it
	Logo       *Image
	DarkLogo   *Image // on dark paper; nil: the same
	Icon       *Image // of the site where it is installed
	Accent     *Accent
	Language   string              // tag; empty: English
	WriteTo    string              // mail address that clients write to
	Selling    *design.SellingBook // that clients are quoted by; nil: the example's
	Footer     []page.Note
	Frames     *[]string // origins whose pages may show this one in a frame; nil: only its own
}
