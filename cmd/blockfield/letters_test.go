package main_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
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

// A client writes to the workshop, the workshop opens the letter as a job, changes the
// design and answers, and the client sees what was changed. The two browsers share
// nothing but the files.
func TestALetterGoesToAndFro(t *testing.T) {
	t.Parallel()
	client, server := openPage(t)
	client.section("money")
	client.put(`[name="record.client.name"]`, "Ada Beech")
	client.put(`[name="record.client.reach"]`, "ada@example.org")
	client.put(`[name="money.budget"]`, "2400")
	client.put(`[name="record.client.message"]`, "For the music room.")
	client.wait(`["“Ada Beech”", "“ada@example.org”", "2400", "“For the music room.”"].every((one) => document.querySelector("#send-leaves").textContent.includes(one))`)
	eval[any](client, `void (function () {`+taken+`})()`)
	client.click(`[data-do="send"]`)
	client.wait(`window.handed`)
	enquiry := eval[handed](client, `window.handed`)
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
	maker.section("look")
	maker.choose("walls[0].groups[0].wood", "oak")
	maker.section("money")
	maker.wait(`document.querySelector("#enquiry-leaves .changes")?.textContent.includes("Oak")`)
	maker.put(`[name="record.client.answer"]`, "Oak goes with your floor.")
	maker.wait(`document.querySelector('#enquiry-leaves a')?.href.startsWith("mailto:ada@example.org?")`)
	eval[any](maker, `void (function () {`+taken+`})()`)
	maker.click(`[data-do="send"]`)
	maker.wait(`window.handed`)
	answer := eval[handed](maker, `window.handed`)
	require.NotContains(t, answer.Text, "Ada")

	client.give(answer)
	client.section("money")
	client.wait(`document.querySelector("#came")?.textContent.includes("Oak goes with your floor.")`)
	assert.Contains(t, client.text("#came .changes"), "Poplar\tOak")
	assert.Equal(t, "Ada Beech", eval[string](client, `document.getElementsByName("record.client.name")[0].value`), "nobody types their name twice")
	require.Eventually(t, func() bool {
		return eval[bool](client, `new Promise((resolve) => {
			indexedDB.open("blockfield").onsuccess = ({target: {result: db}}) => {
				db.transaction("records").objectStore("records").getAll().onsuccess = ({target}) => {
					db.close();
					resolve(target.result.some((text) => text.includes("Oak goes with your floor.")));
				};
			};
		})`)
	}, time.Minute, 100*time.Millisecond, "the answer is kept with the job")
	client.reload()
	client.section("money")
	client.wait(`document.querySelector("#came")?.textContent.includes("Oak goes with your floor.")`)
}

// give opens a letter as a file that a person has chosen.
func (b *tab) give(h handed) {
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
	b.wait(`/is open/.test(document.querySelector("#announce").textContent)`)
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
	eval[any](b, `void (function () {`+taken+`})()`)
	widths := []int64{1440, 768, 390}
	shoot := func(name string) {
		for _, width := range widths {
			b.size(width, 900)
			b.shoot(fmt.Sprintf("%s-%d.png", name, width))
		}
	}
	shoot("send")
	b.click(`[data-do="send"]`)
	b.wait(`window.handed`)
	enquiry := eval[handed](b, `window.handed`)
	b.read("maker")
	b.give(enquiry)
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
	b.wait(`(window.handed = null) === null`)
	b.click(`[data-do="send"]`)
	b.wait(`window.handed`)
	answer := eval[handed](b, `window.handed`)
	b.read("client")
	b.give(answer)
	b.section("money")
	b.wait(`document.querySelector("#came .changes")`)
	shoot("answer")
}
