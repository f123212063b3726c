package web

import (
	"encoding/json"
	"fmt"
	"mime"

	"blockfield/engine/design"
	"blockfield/engine/page"
)

// brand is what a site shows of whose it is.
type brand struct {
	files map[string][]byte // beside the page
	shown page.Brand
}

// branded is the brand of settings; drawn is the icon of a site that has none of its own.
func branded(s Settings, drawn []byte) brand {
	b := brand{map[string][]byte{}, page.Brand{Name: s.Name, NameInLogo: s.NameInLogo, Notes: s.Footer}}
	b.shown.Logo, b.shown.DarkLogo = b.add("logo", s.Logo), b.add("logo-dark", s.DarkLogo)
	b.shown.Icon = page.Picture{Address: icon}
	if s.Icon == nil {
		b.files[icon] = drawn
	} else {
		b.shown.Icon = *b.add("icon", s.Icon)
	}
	if s.Selling != nil {
		b.shown.Prices = string(design.EncodeSelling(*s.Selling))
	}
	return b
}

// add keeps an image and returns where it is; nil where there is none.
func (b brand) add(what string, i *Image) *page.Picture {
	if i == nil {
		return nil
	}
	name := i.named(what)
	b.files[name] = i.Body
	return &page.Picture{Address: name, Width: int(i.Width + 0.5), Height: int(i.Height + 0.5)}
}

// manifest is the one of the site, in its words and colours.
func (b brand) manifest(text []byte, in Ingredients) ([]byte, error) {
	var all map[string]any
	if err := json.Unmarshal(text, &all); err != nil {
		return nil, fmt.Errorf("build: %s: %w", manifest, err)
	}
	all["lang"], all["description"] = in.language(), in.About
	if b.shown.Name != "" {
		all["name"], all["short_name"] = b.shown.Name, b.shown.Name
	}
	if in.Settings.Accent != nil {
		all["theme_color"] = in.Settings.Accent.Light.String()
	}
	if own := b.shown.Icon; own.Width > 0 {
		sizes := fmt.Sprintf("%dx%d", own.Width, own.Height)
		kind, _, _ := mime.ParseMediaType(mediaType(own.Address))
		if kind == "image/svg+xml" {
			sizes = "any"
		}
		all["icons"] = []any{map[string]string{"src": own.Address, "type": kind, "sizes": sizes, "purpose": "any"}}
	}
	return json.MarshalIndent(all, "", "  ")
}

// language is the tag of the language that the page begins in.
func (in Ingredients) language() string {
	if in.Settings.Language == "" {
		return "en"
	}
	return in.Settings.Language
}
