package main_test

import (
	"encoding/json"
	"strings"
	"testing"

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
