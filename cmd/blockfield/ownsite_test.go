package main_test

import (
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/cmd/blockfield/web"
	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/page"
)

// This file is about a site that a workshop has built as its own.

const workshopLogo = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 160 48"><g fill="#0a5c5c"><rect y="4" width="18" height="40"/><rect x="22" y="14" width="18" height="30"/><rect x="44" y="24" width="18" height="20"/></g><path d="M74 40V8h5v13h14V8h5v32h-5V26H79v14z" fill="#112222"/></svg>`

// workshopSettings are all that can be set.
func workshopSettings(t *testing.T) web.Settings {
	t.Helper()
	logo, err := web.ReadImage([]byte(workshopLogo))
	require.NoError(t, err)
	light, _ := web.ParseColour("#0a5c5c")
	dark, _ := web.ParseColour("#7fd1cc")
	book := design.DefaultBook()
	book.Name, book.Placeholder, book.Currency = "Elm 2026", false, "EUR"
	selling, err := engine.SellingBook(book)
	require.NoError(t, err)
	return web.Settings{
		Name: "Elm Yard Woodworks", Logo: &logo, Accent: &web.Accent{Light: light, Dark: dark},
		WriteTo: "post@elm.example", Selling: &selling,
		Footer: []page.Note{{Text: "Imprint", Address: "https://elm.example/imprint"}, {Text: "Privacy", Address: "https://elm.example/privacy"}, {Text: "5 Mill Lane, Appleby"}},
	}
}

// The longest name of a workshop leaves tools and menus their place, beside a logo too.
func TestLongNameLeavesRoom(t *testing.T) {
	settings := workshopSettings(t)
	settings.Name = "Joinery and Sound Furniture Applewhite-Underbarrow & Sons Ltd"[:60]
	s := newServer(t, newGate(ownSite(t, settings).Handler(), "preview.wasm"))
	b := newTab(t)
	b.open(s.URL + "/")
	b.alive()
	b.read(page.Maker)
	for _, width := range []int64{320, 390, 560, 768, 1000, 1440} {
		b.size(width, 844)
		assert.LessOrEqual(t, eval[int](b, "document.documentElement.scrollWidth"), int(width))
		assert.True(t, eval[bool](b, `(() => {
			const name = document.querySelector(".brand span").getBoundingClientRect(), tools = [...document.querySelectorAll(".tools > *")].map((e) => e.getBoundingClientRect());
			return name.width > 80 && tools.every((r) => r.left >= 0 && r.right <= innerWidth && (r.left >= name.right || r.top >= name.bottom));
		})()`), "%d px: name and tools", width)
		for _, menu := range []string{"#menu", "#examples", "#find"} {
			at := eval[[]float64](b, `(() => {
				const menu = document.querySelector("`+menu+`");
				menu.open = true;
				const r = menu.querySelector(".sheet-menu").getBoundingClientRect(), top = document.querySelector(".tools").lastElementChild.getBoundingClientRect().bottom;
				menu.open = false;
				return [r.left, innerWidth - r.right, r.top - top, innerHeight - r.bottom];
			})()`)
			for _, room := range at {
				assert.GreaterOrEqual(t, room, 0.0, "%d px, %s: room at the left, the right, above and below is %v", width, menu, at)
			}
		}
		b.keepShot("own-long-" + strconv.FormatInt(width, 10))
	}
}

// keepShot keeps a picture of the window where pictures are wanted.
func (b *tab) keepShot(name string) {
	b.t.Helper()
	if *screensDir == "" {
		return
	}
	shot, err := chromedp.Run(b.ctx, chromedp.FullScreenshot(100))
	require.NoError(b.t, err)
	require.NoError(b.t, os.WriteFile(filepath.Join(*screensDir, name+".png"), shot, 0o644))
}

// The brand is where it belongs, in both languages and after the engine has spoken, and the
// prices are the workshop's.
func TestOwnSite(t *testing.T) {
	s := newServer(t, newGate(ownSite(t, workshopSettings(t)).Handler(), "preview.wasm"))
	b := newTab(t)
	b.open(s.URL + "/")
	b.alive()
	assert.Equal(t, "Elm Yard Woodworks: wooden block sound diffusers", eval[string](b, "document.title"))
	assert.Equal(t, "rgb(10, 92, 92)", eval[string](b, `getComputedStyle(document.querySelector(".notes a")).color`))
	assert.Equal(t, []string{"Imprint", "Privacy", "5 Mill Lane, Appleby"}, eval[[]string](b, `[...document.querySelectorAll(".notes li")].map((e) => e.innerText)`))
	assert.True(t, eval[bool](b, `document.querySelector(".logo img").naturalWidth > 0`))
	for _, width := range []int64{320, 390, 768, 1440} {
		b.size(width, 844)
		assert.LessOrEqual(t, eval[int](b, "document.documentElement.scrollWidth"), int(width))
		assert.True(t, eval[bool](b, `document.querySelector(".brand").checkVisibility() && document.querySelector(".logo img").getBoundingClientRect().width > 40`))
		b.keepShot("own-" + strconv.FormatInt(width, 10))
	}
	b.section(page.Money)
	b.wait(`document.querySelector("#section").innerText.includes("€")`)
	assert.NotContains(t, b.text("body"), "xample figures", "nobody has opened a book here, and there is nothing to go back to")
	b.keepShot("own-money-1440")
	b.section(page.Papers)
	b.wait(`document.querySelector(".leaf")?.textContent.includes("Elm Yard Woodworks")`)
	b.keepShot("own-papers-1440")
	b.choose("view.language", "de")
	b.wait(`document.title === "Elm Yard Woodworks: Schalldiffusoren aus Holzklötzen"`)
	_, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: "dark"}},
	})
	require.NoError(t, err)
	assert.Equal(t, "rgb(127, 209, 204)", eval[string](b, `getComputedStyle(document.querySelector(".notes a")).color`))
	b.keepShot("own-dark-1440")
	b.size(390, 844)
	b.keepShot("own-dark-390")

	// A worker that takes the place of another knows whose page it is.
	b.inWorker(dies)
	b.choose("view.language", "en")
	b.wait(`!document.querySelector("#status").hidden`)
	eval[any](b, `location.hash = "#money"`) // the messages move what a mouse would aim at
	b.wait(`document.querySelector("#section").innerText.includes("€")`)
	for key, text := range b.stored() {
		assert.NotContains(t, text, "Elm 2026", key)
	}
}
