package main_test

import (
	"fmt"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// placeValue is a field of the first panel's place.
func placeValue(name string) string {
	return fmt.Sprintf(`document.getElementsByName("walls[0].groups[0].place.%s")[0].value`, name)
}

// mouse does something at a place of the window, the main button held or not.
func (b *tab) mouse(kind input.DispatchMouseEventType, x, y float64) {
	b.t.Helper()
	_, err := chromedp.Call(b.ctx, input.DispatchMouseEvent, input.DispatchMouseEventParams{
		Type: kind, X: x, Y: y, Button: input.MouseButtonLeft, Buttons: 1, ClickCount: 1,
	})
	require.NoError(b.t, err)
}

// The panel follows the mouse on the drawing of its wall, by the drawing's own scale;
// the drag is one step back. The arrow keys move it from there.
func TestAPanelIsMovedOnItsWall(t *testing.T) {
	b, _ := openPicture(t)
	b.section("wall")
	eval[any](b, `document.querySelector("#wall-pad-0").scrollIntoView({block: "center", behavior: "instant"})`)
	at := eval[[]float64](b, `(() => {
		const r = document.querySelector("#wall-pad-0 .panel").getBoundingClientRect();
		return [r.x + r.width / 2, r.y + r.height / 2, document.querySelector("#wall-pad-0 svg").getScreenCTM().a];
	})()`)
	x, y, pixels := at[0], at[1], at[2]
	b.mouse(input.DispatchMouseEventTypeMousePressed, x, y)
	for i := 1; i <= 10; i++ { // 300 mm to the right, 200 up
		part := float64(i) / 10
		b.mouse(input.DispatchMouseEventTypeMouseMoved, x+300*part*pixels, y-200*part*pixels)
	}
	b.mouse(input.DispatchMouseEventTypeMouseReleased, x+300*pixels, y-200*pixels)
	b.wait(`Math.abs(parseFloat(` + placeValue("left") + `) - 1430) < 25`)
	b.wait(`Math.abs(parseFloat(` + placeValue("height") + `) - 1100) < 25`)
	left := eval[string](b, placeValue("left"))

	b.focus("#wall-pad-0")
	b.do(chromedp.KeyEvent(kb.ArrowLeft))
	b.wait(placeValue("left") + ` !== ` + quote(left))
	var was, is float64
	_, err := fmt.Sscanf(left, "%g mm", &was)
	require.NoError(t, err)
	_, err = fmt.Sscanf(eval[string](b, placeValue("left")), "%g mm", &is)
	require.NoError(t, err)
	assert.InDelta(t, was-10, is, 1e-9)
	assert.True(t, eval[bool](b, `document.activeElement.id === "wall-pad-0"`), "the drawing keeps the focus")

	b.click("#undo")
	b.wait(placeValue("left") + ` === ` + quote(left))
	b.click("#undo")
	b.wait(placeValue("left") + ` === "1130 mm"`)
}
