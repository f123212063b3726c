package main_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
)

// speak changes the language of the page in the file menu.
func (b *tab) speak(language string) {
	b.t.Helper()
	b.choose("view.language", language)
	b.wait(fmt.Sprintf(`document.documentElement.lang === %q`, language))
	b.settle()
}

// A page turns to German and back as a whole, keeps it, and takes numbers as Germans
// write them.
func TestGermanInTheBrowser(t *testing.T) {
	b, _ := openPicture(t)
	frame := func() string {
		return eval[string](b, `["header.top", ".stage-tools", "footer", "title", "#nav", "#messages", "#pad-help"].map(
			(part) => document.querySelector(part).textContent).join("\n")`)
	}
	english := frame()
	b.speak("de")
	german := frame()
	assert.NotEqual(t, english, german)
	for _, word := range []string{"Datei", "Neu beginnen", "Ich sehe mich um", "Millimeter", "Lampe schwenken", "Warmweiß", "Klang", "Probenraum eines Streichquartetts"} {
		assert.Contains(t, german, word)
	}
	for _, word := range []string{"Start afresh", "Sound", "The calculation", "Swing", "Lengths", "pine"} {
		assert.Contains(t, english+"pine", word)
		assert.NotContains(t, german, word)
	}
	assert.Equal(t, "Paneel für ein Wohnzimmer", b.text("#title"))
	assert.Equal(t, "Zurücknehmen", eval[string](b, `document.querySelector("#undo").title`))
	b.speak("en")
	assert.Equal(t, english, frame())

	b.speak("de")
	b.read("maker")
	edits := []string{"view.reading", "maker"}
	for _, edit := range []struct{ path, typed, plain string }{
		{"walls[0].groups[0].block.slack", "0,35", "0.35"},
		{"walls[0].groups[0].height", "30 Zoll", "30 in"},
	} {
		edits = append(edits, edit.path, edit.plain)
		_, plan := edited(t, edits...)
		b.set(edit.path, edit.typed)
		b.shows(plan.Revision)
	}
	b.section("money")
	b.set("money.budget", "12,5x")
	b.wait(`document.querySelector("[name='money.budget']").getAttribute("aria-invalid")`)
	assert.Contains(t, b.faultAt("money.budget"), "12,5x ist kein Geldbetrag")
	_, thousand := edited(t, append(edits, "money.budget", "1500")...)
	b.set("money.budget", "1.500")
	b.shows(thousand.Revision)
	_, plan := edited(t, append(edits, "money.budget", "2500.50")...)
	b.set("money.budget", "2500,50")
	b.shows(plan.Revision)

	b.reload()
	b.wait(`document.documentElement.lang === "de"`)
	assert.Contains(t, frame(), "Lampe schwenken")
	b.menu("new")
	b.wait(`document.querySelector("#status").innerText.includes("Ein neuer Entwurf ist offen")`)
	assert.Equal(t, "de", eval[string](b, `document.documentElement.lang`))
	b.speak("en")
	said := b.text("body > #status")
	for _, key := range []string{"message/shown-new", "message/dismiss"} {
		assert.Contains(t, said, sentence(key), "what is said above turns with the page")
	}
}
