package main_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/design"
)

// taken has a tab keep the files that it would hand to its share sheet.
const taken = `navigator.canShare = () => true;
navigator.share = async ({files, text}) => { window.handed = {name: files[0].name, text: await files[0].text(), to: text}; };`

// handed is the letter that a tab has handed on.
type handed struct {
	Name string `json:"name"`
	Text string `json:"text"`
	To   string `json:"to"`
}

// A client writes to the workshop, with a picture of the wall, the workshop opens the
// letter as a job, changes the design and answers, and the client sees what was changed,
// and writes once more: that is a change of the job. The two browsers share nothing but
// the files.
func TestALetterGoesToAndFro(t *testing.T) {
	t.Parallel()
	client, server := openPage(t)
	client.section("money")
	client.put(`[name="record.client.name"]`, "Ada Beech")
	client.put(`[name="record.client.reach"]`, "ada@example.org")
	client.put(`[name="money.budget"]`, "2400")
	client.put(`[name="record.client.message"]`, "For the music room.")
	client.wait(`["“Ada Beech”", "“ada@example.org”", "2400", "“For the music room.”"].every((one) => document.querySelector("#send-leaves").textContent.includes(one))`)
	eval[any](client, `document.getElementById("photos-more").open = true`)
	client.do(chromedp.SetUploadFiles(chromedp.CSS(`#money-send [data-photo="wall"]`), []string{photo(t, 2600, 1300)}))
	client.wait(`document.querySelector("#photos img")?.naturalWidth === 2000`)
	client.set("money.budget", "many")
	client.wait(`document.querySelector('.field:has([name="money.budget"]) .fault').innerText.includes("many")`)
	eval[any](client, `document.querySelector('#send-leaves [data-do="send"]').click()`)
	client.wait(`document.activeElement.name === "money.budget"`)
	client.set("money.budget", "2,400")
	client.wait(`document.querySelector('.field:has([name="money.budget"]) .fault').hidden`)
	assert.NotContains(t, client.text("#send-leaves"), "open its file here", "no letter was made with the budget of before")
	enquiry := client.handsOn()
	sent, _, err := design.DecodeLetter([]byte(enquiry.Text))
	require.NoError(t, err)
	require.Len(t, sent.Photos, 1)
	assert.Equal(t, "wall", sent.Photos[0].Kind)
	kept := client.stored()
	for name, text := range kept {
		assert.NotContains(t, text, sent.Photos[0].JPEG[:64], "%s: a design holds no picture", name)
	}
	assert.Equal(t, "workshop@example.org", enquiry.To)
	assert.True(t, strings.HasSuffix(enquiry.Name, ".txt"), enquiry.Name)
	client.wait(`document.querySelector("#send-leaves").textContent.includes("open its file here")`)

	maker := newProfile(t)
	maker.open(server.URL + "/")
	maker.alive()
	maker.read("maker")
	maker.give(enquiry)
	maker.section("money")
	maker.wait(`document.querySelector("#enquiry").textContent.includes("“Ada Beech”")`)
	assert.Contains(t, maker.text("#enquiry"), "“For the music room.”")
	assert.NotContains(t, eval[string](maker, `Object.keys(localStorage).map((key) => localStorage[key]).join()`), "Ada", "a design file knows no client")
	maker.section("wall")
	eval[any](maker, `document.getElementById("photos-more").open = true`)
	maker.wait(`document.querySelector("#photos img")?.naturalWidth === 1600`)
	assert.Contains(t, maker.text("#photos figcaption"), "The wall")
	maker.section("look")
	maker.choose("walls[0].groups[0].wood", "oak")
	maker.section("money")
	maker.wait(`document.querySelector("#enquiry-leaves .changes")?.textContent.includes("Oak")`)
	maker.put(`[name="record.client.answer"]`, "Oak goes with your floor.")
	maker.wait(`document.querySelector('#enquiry-leaves a')?.href.startsWith("mailto:ada@example.org?")`)
	answer := maker.handsOn()
	require.NotContains(t, answer.Text, "Ada")

	client.give(answer)
	client.section("money")
	client.wait(`document.querySelector("#came")?.textContent.includes("Oak goes with your floor.")`)
	assert.Contains(t, client.text("#came .changes"), "Poplar\tOak")
	assert.Equal(t, "Ada Beech", eval[string](client, `document.getElementsByName("record.client.name")[0].value`), "nobody types their name twice")
	client.recorded("Oak goes with your floor.")
	client.reload()
	client.section("money")
	client.wait(`document.querySelector("#came")?.textContent.includes("Oak goes with your floor.")`)

	client.section("look")
	client.choose("walls[0].groups[0].wood", "ash")
	client.section("money")
	client.put(`[name="record.client.message"]`, "Or rather ash?")
	client.wait(`document.querySelector("#send-leaves").textContent.includes("ash?”")`)
	again := client.handsOn()
	jobs, revision := len(maker.jobs()), maker.revision()
	maker.chooses(again)
	maker.says("“Ada Beech”")
	assert.Equal(t, revision, maker.revision(), "nothing was opened yet")
	maker.press("Take it in as a change of that job")
	maker.says("The job was changed.")
	maker.says("Wood: Oak → Ash")
	maker.section("money")
	maker.wait(`document.querySelector("#enquiry").textContent.includes("Or rather ash?")`)
	assert.Len(t, maker.jobs(), jobs, "no further job")
}

// handsOn sends a letter, by a share sheet that keeps it.
func (b *tab) handsOn() handed {
	b.t.Helper()
	eval[any](b, `void (function () { window.handed = null; `+taken+`})()`)
	b.click(`[data-do="send"]`)
	b.wait(`window.handed`)
	return eval[handed](b, `window.handed`)
}

// A letter waits while an entry anywhere was refused, and leads to it: it would say what stood
// there before. What was refused is said in the language and the units of the page.
func TestALetterWaitsForWhatWasRefused(t *testing.T) {
	t.Parallel()
	b, _ := openPage(t)
	b.put(control(heightPath), "high")
	b.wait(`document.querySelector(` + quote(control(heightPath)) + `).getAttribute("aria-invalid")`)
	b.section("money")
	eval[any](b, `(HTMLAnchorElement.prototype.click = () => {}, 0)`) // no file is kept
	b.click(`[data-do="save"][value="letter"]`)
	b.says(sentence("message/letter-waits"))
	assert.Equal(t, heightPath, eval[string](b, `document.activeElement.name`))
	assert.Contains(t, b.faultAt(heightPath), "300 mm")

	b.choose("view.units", "in/16")
	b.wait(`/11 13.16 in/.test(document.querySelector(` + quote(control(heightPath)) + `).closest(".field").innerText)`)
	b.choose("view.language", "de")
	b.wait(`/11 13.16 Zoll/.test(document.querySelector(` + quote(control(heightPath)) + `).closest(".field").innerText)`)
	b.choose("view.language", "en")
	b.wait(`document.documentElement.lang === "en"`)

	b.click("#undo")
	b.wait(`document.querySelector("#status").hidden`)
	assert.Empty(t, b.faultAt(heightPath))
	b.section("money")
	b.click(`[data-do="save"][value="letter"]`)
	b.wait(`document.querySelector("#send-leaves").innerText.includes("The file was made on")`)
}

// jobs are the names under which the profile keeps designs.
func (b *tab) jobs() []string {
	b.t.Helper()
	return eval[[]string](b, `Object.keys(localStorage).filter((key) => key.startsWith("blockfield.job."))`)
}

// recorded waits until the record of some job holds a text.
func (b *tab) recorded(text string) {
	b.t.Helper()
	require.Eventually(b.t, func() bool {
		return eval[bool](b, fmt.Sprintf(`new Promise((resolve) => {
			indexedDB.open("blockfield").onsuccess = ({target: {result: db}}) => {
				db.transaction("records").objectStore("records").getAll().onsuccess = ({target}) => {
					db.close();
					resolve(target.result.some((text) => text.includes(%q)));
				};
			};
		})`, text))
	}, time.Minute, 100*time.Millisecond, "it is kept with the job")
}

// give opens a letter as a file that a person has chosen.
func (b *tab) give(h handed) {
	b.t.Helper()
	b.chooses(h)
	b.wait(`/is open/.test(document.querySelector("#announce").textContent)`)
}

// chooses gives a letter as a file.
func (b *tab) chooses(h handed) {
	b.t.Helper()
	text, err := json.Marshal(h)
	require.NoError(b.t, err)
	eval[any](b, `void (function ({name, text}) {
		const chosen = new DataTransfer();
		document.getElementById("announce").textContent = "";
		chosen.items.add(new File([text], name, {type: "text/plain"}));
		const input = document.getElementById("file");
		input.files = chosen.files;
		input.dispatchEvent(new Event("change"));
	})(`+string(text)+`)`)
}

// Pictures of the letters, as their two readers see them.
//
//	go test ./cmd/blockfield -run TestLetterScreens -screens DIR
func TestLetterScreens(t *testing.T) {
	if *screensDir == "" {
		t.Skip("only with -screens DIR")
	}
	b, _ := openPage(t)
	b.section("money")
	b.put(`[name="record.client.name"]`, "Ada Beech")
	b.put(`[name="record.client.reach"]`, "ada@example.org")
	b.put(`[name="record.client.message"]`, "For the music room, where the piano stands.")
	b.wait(`document.querySelector("#send-leaves").textContent.includes("“Ada")`)
	widths := []int64{1440, 768, 390}
	shoot := func(name string) {
		for _, width := range widths {
			b.size(width, 900)
			b.shoot(fmt.Sprintf("%s-%d.png", name, width))
		}
	}
	shoot("send")
	enquiry := b.handsOn()
	b.read("maker")
	b.chooses(enquiry) // it was written in this very browser
	b.says("Nothing was opened yet")
	shoot("again")
	b.press("Open it as another job")
	b.wait(`/is open/.test(document.querySelector("#announce").textContent)`)
	b.section("money")
	b.click(`[data-act="book-open"]`)
	b.wait(`document.querySelector('[data-act="confirm"][data-path="book."]')`)
	b.click(`[data-act="confirm"][data-path="book."]`)
	b.wait(`document.querySelector('[data-act="make-offer"]')`)
	b.click(`[data-act="book-close"]`)
	b.section("look")
	b.choose("walls[0].groups[0].wood", "oak")
	b.section("bench")
	b.wait(`(document.querySelector("#shop-learn-more").open = true)`)
	b.set("record.times[0].minutes", "95")
	b.set("record.times[1].minutes", "40")
	b.set("record.spent[0].amount", "512")
	b.section("money")
	b.click(`[data-act="make-offer"]`)
	b.put(`[name="record.client.answer"]`, "Oak goes with your floor, and takes a knock better.")
	shoot("enquiry")
	answer := b.handsOn()
	b.read("client")
	b.give(answer)
	b.section("money")
	b.wait(`document.querySelector("#came .changes")`)
	shoot("answer")
}
