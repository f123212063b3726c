package page

import (
	"strings"
	"testing"

	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
)

// A figure stands in one line with its unit. "_" is a space at which no line ends,
// "~" what joins two signs.
func TestFiguresStayWithTheirUnits(t *testing.T) {
	for text, want := range map[string]string{
		`<p>from 1203 mm to 2297.6 mm</p>`:                           `<p>from 1203_mm to 2297.6_mm</p>`,
		`1205 × 806 mm, 18 °C, 0.24 l, 8 %.`:                         `1205_×_806_mm, 18_°C, 0.24_l, 8_%.`,
		`12 wood screws No. 8, 50 mm long; 2 lots, 3 hours, 4 minor`: `12 wood screws No._8, 50_mm long; 2 lots, 3 hours, 4 minor`,
		`4500 mm × 3500 mm`:                                          `4500_mm_× 3500_mm`,
		`on 2026-03-31, by 12-03-31, 2026-13-01`:                     `on 2026~-~03~-~31, by 12-03-31, 2026-13-01`,
		`2026-03-31`:                                                 `2026~-~03~-~31`, `<input value="2026-03-31">2026-`: `<input value="2026-03-31">2026-`,
		`4 5/16 in deep, 36 1/16 × 72 in, of 3/4 in, 2 11 in`: `4_5/16_in deep, 36_1/16_×_72_in, of 3/4_in, 2 11_in`,
		`26 / 42 mm`: `26_/ 42_mm`,
		`<input value="1200 mm" title="3 mm"><b>5 kg</b>`:        `<input value="1200 mm" title="3 mm"><b>5_kg</b>`,
		`<textarea name="x">26 mm</textarea> 26 mm`:              `<textarea name="x">26 mm</textarea> 26_mm`,
		`<option>36 mm</option><svg><text>9 mm</text></svg>7 mm`: `<option>36 mm</option><svg><text>9 mm</text></svg>7_mm`,
		`<svgx>9 mm</svgx>, a broken <b class="8 mm`:             `<svgx>9_mm</svgx>, a broken <b class="8 mm`,
		`12`: `12`, ` mm`: ` mm`, `12 `: `12 `, `36 mm`: `36_mm`, `11 Zoll, 9 kg/m³, 3 l)`: `11_Zoll, 9_kg/m³, 3_l)`,
	} {
		assert.Equal(t, strings.NewReplacer("_", "\u00a0", "~", joiner).Replace(want), together(text), text)
		assert.Equal(t, together(text), together(together(text)), text)
	}
}

// A date is said as the language does before it is held together.
func TestDatesAreSaidInTheLanguage(t *testing.T) {
	v := &view{Input: Input{Words: words.Reader{Language: words.German()}}}
	assert.Equal(t, "aufgehängt am 31.03.2026", v.T("fold/hung", "day", "2026-03-31"))
}
