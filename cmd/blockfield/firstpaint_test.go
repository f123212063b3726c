package main_test

import (
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine"
	"blockfield/engine/design"
)

// defaultPlan is what the engine says of the default design, by Go itself.
func defaultPlan(t *testing.T) engine.Result {
	t.Helper()
	plan, err := engine.Plan(design.Default().Design, design.DefaultBook())
	require.NoError(t, err)
	return plan
}

// The page is whole before any script has run: the picture, the figures and the
// controls of the default design.
func TestFirstPaintNeedsNoScript(t *testing.T) {
	s := newServer(t, builtSite(t).Handler())
	b := newTab(t)
	_, err := chromedp.Call(b.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
	require.NoError(t, err)
	b.open(s.URL + "/")
	plan := defaultPlan(t)
	assert.Equal(t, plan.Title, b.text("#title"))
	assert.Equal(t, plan.Revision, b.text("#revision"))
	b.wait(`document.querySelector("#still").naturalWidth > 300`)
	strip := b.text("#strip")
	for _, figure := range []string{"kg", "×"} {
		assert.Contains(t, strip, figure, "the client's strip")
	}
	assert.NotEmpty(t, eval[string](b, `document.querySelector('[name="walls[0].groups[0].width"]').value`))
	assert.False(t, eval[bool](b, `document.documentElement.classList.contains("opening")`))
	for _, path := range s.paths() {
		assert.False(t, strings.HasSuffix(path, ".wasm") || strings.HasSuffix(path, ".js"), "asked for %s", path)
	}
}

// When the page comes alive nothing jumps: every block of it stays where it was.
// That its picture stays the same too is TestPosterIsThePicture's.
func TestNothingJumpsWhenThePageComesAlive(t *testing.T) {
	const places = `Object.fromEntries(["#stage", "#strip", "#nav", "#title", "#section", "footer"].map((s) => {
		const r = document.querySelector(s).getBoundingClientRect();
		return [s, [r.x, r.y + scrollY, r.width, r.height].map(Math.round)]; }))`
	for _, width := range []int64{1440, 390} {
		hold := newGate(newGate(builtSite(t).Handler(), "preview.wasm"), "engine.wasm")
		s := newServer(t, hold)
		asleep := newTab(t)
		asleep.size(width, 900)
		asleep.open(s.URL + "/")
		asleep.wait(`document.readyState === "complete"`)
		where := eval[map[string][]int](asleep, places)

		alive, _ := openPicture(t, window(width, 900))
		assert.Equal(t, where, eval[map[string][]int](alive, places), "%d px", width)
	}
}
