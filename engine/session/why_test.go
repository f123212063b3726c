package session_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/money"
	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A price is explained to its maker, who asks for it: the steps, the odds, the hours.
func TestWhyThisPrice(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	closed := read(t, s, "maker", "money")
	assert.Contains(t, closed, `data-act="why-open"`)
	assert.NotContains(t, closed, `class="waterfall"`)
	open := html(act(t, s, session.Request{Name: "why-open"}))
	for _, want := range []string{`class="waterfall"`, "margin asked for", "less than the floor of 10 % is left", "Drawn 4000 times", "Sand show end", s.Plan().Price.Gross.Format("en")} {
		assert.Contains(t, open, want)
	}
	assert.Contains(t, html(set(t, s, "money.discount", "10")), "less than the floor", "it follows an edit")
	for _, reading := range []string{"client", "builder"} {
		shown := read(t, s, reading, "money")
		assert.NotContains(t, shown, "floor")
		assert.NotContains(t, shown, "waterfall")
	}
}

// The tasks that are not named take no longer together than the longest one that is.
func TestTheRestIsNotTheLargest(t *testing.T) {
	row := regexp.MustCompile(`<tr><th scope="row">([^<]*)</th><td>([0-9.]+) h</td>`)
	for _, name := range []string{"s2", "s7"} {
		s := atTheBench(t, name)
		read(t, s, "maker", "money")
		open := html(act(t, s, session.Request{Name: "why-open"}))
		rows := row.FindAllStringSubmatch(open[strings.Index(open, "task-lines"):], -1)
		require.Greater(t, len(rows), 12, name)
		first, _ := strconv.ParseFloat(rows[0][2], 64)
		last := rows[len(rows)-1]
		require.Equal(t, "all others", last[1], name)
		rest, _ := strconv.ParseFloat(last[2], 64)
		assert.Positive(t, rest, name)
		assert.LessOrEqual(t, rest, first, name)
	}
}

// What would have to change for the budget, and making the changes as one step.
func TestWhatWouldHaveToChange(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	read(t, s, "maker", "money")
	before := s.Plan()
	require.True(t, set(t, s, "money.budget", "2900").OK)
	assert.Contains(t, html(ask(t, s, session.Request{Op: "hello"})), `data-act="ways"`)
	shown := html(act(t, s, session.Request{Name: "ways"}))
	assert.Contains(t, shown, "What would have to change")
	assert.Contains(t, shown, `data-act="go-way" data-path="0"`)
	act(t, s, session.Request{Name: "go-way", Path: "0"})
	assert.LessOrEqual(t, s.Plan().Price.Gross.Minor, int64(2900_00))
	assert.False(t, ask(t, s, session.Request{Op: "act", Name: "go-way", Path: "0"}).OK, "it was asked of another design")
	ask(t, s, session.Request{Op: "undo"})
	ask(t, s, session.Request{Op: "undo"})
	assert.Equal(t, before.Revision, s.Plan().Revision)
}

// Each reader may begin with a budget; a client sees ranges and no private figure.
func TestBeginWithABudget(t *testing.T) {
	sentinel, digits := designtest.Sentinel(t)
	s := fresh()
	openBook(t, s, design.EncodeBook(sentinel), "file")
	for _, reading := range []string{"client", "maker", "builder"} {
		shown := read(t, s, reading, "money")
		assert.Contains(t, shown, `data-act="from-budget"`, reading)
		assert.Equal(t, 1, strings.Count(shown, `name="money.budget"`), reading)
		require.True(t, set(t, s, "money.budget", map[string]string{"client": "4000", "maker": "4000", "builder": "700"}[reading]).OK)
		shown = html(act(t, s, session.Request{Name: "from-budget"}))
		assert.Contains(t, shown, "As large as can be", reading)
		assert.Contains(t, shown, `data-act="take-candidate" data-path="0"`, reading)
		cards := strings.Split(shown, `<p class="look-name">`)[1:]
		cards = cards[len(cards)-3:] // the kept looks come first
		for i, c := range cards {
			assert.Regexp(t, `<p class="small">\d+ panels? of [a-z]+, (it is|each) \d+ × \d+ mm\.</p>`, c, i)
		}
		if reading == "client" {
			for _, d := range digits {
				assert.False(t, strings.Contains(shown, d), d)
			}
		}
		revision := s.Plan().Revision
		act(t, s, session.Request{Name: "take-candidate", Path: "0"})
		assert.NotEqual(t, revision, s.Plan().Revision)
		ask(t, s, session.Request{Op: "undo"})
		assert.Equal(t, revision, s.Plan().Revision)
	}
	read(t, s, "client", "money")
	set(t, s, "money.budget", "0")
	assert.Contains(t, html(act(t, s, session.Request{Name: "from-budget"})), "No budget was said yet.")
}

// What a budget buys is no answer for another budget, and where no change is enough it is
// said how near the strongest come.
func TestAnswersAreOfTheirBudget(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	read(t, s, "maker", "money")
	require.True(t, set(t, s, "money.budget", "2500").OK)
	assert.Contains(t, html(act(t, s, session.Request{Name: "from-budget"})), `data-act="take-candidate"`)
	res := set(t, s, "money.budget", "30")
	require.Contains(t, html(res), `id="from-budget-more"`, "the answer is drawn anew")
	assert.NotContains(t, html(res), `data-act="take-candidate"`)
	none := html(act(t, s, session.Request{Name: "ways"}))
	assert.Contains(t, none, "No three of the usual changes are enough")
	assert.Contains(t, none, "The strongest that can be made together:")
	assert.NotContains(t, none, `data-act="go-way"`)
}

// Suggestions are pictured in the tones of their own wood: pale poplar and dark walnut are
// told apart.
func TestSuggestionsAreInTheToneOfTheirWood(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	read(t, s, "maker", "money")
	require.True(t, set(t, s, "money.budget", "4000").OK)
	require.True(t, set(t, s, group+".wood", "cherry").OK)
	shown := html(act(t, s, session.Request{Name: "from-budget"}))
	tones := map[string]map[string]bool{} // by wood
	for _, card := range strings.Split(shown, `class="drawing field-drawing"`)[1:] {
		wood := regexp.MustCompile(`panels? of ([a-z]+),`).FindStringSubmatch(card)
		if wood == nil {
			continue
		}
		of := map[string]bool{}
		picture, _, _ := strings.Cut(card, "</svg>")
		for _, fill := range regexp.MustCompile(`fill="(#[0-9a-f]{6})"`).FindAllStringSubmatch(picture, -1) {
			of[fill[1]] = true
		}
		require.NotEmpty(t, of)
		tones[wood[1]] = of
	}
	require.GreaterOrEqual(t, len(tones), 2, "%v", tones)
	seen := map[string]string{}
	for wood, of := range tones {
		for tone := range of {
			assert.Empty(t, seen[tone], "%s is of %s too", tone, wood)
			seen[tone] = wood
		}
	}
}

// A note that is folded beside the budget is opened by what it is about.
func TestTheNoteOfTheBudgetSaysWhatItIs(t *testing.T) {
	s := fresh()
	openBook(t, s, design.EncodeBook(ownBook()), "file")
	read(t, s, "maker", "money")
	require.True(t, set(t, s, "money.budget", "1000").OK)
	over := s.Plan().Price.Gross.Sub(money.New(1000_00, "EUR"))
	assert.Contains(t, html(ask(t, s, session.Request{Op: "section", Name: "money"})), ">Note: "+over.Format("en")+" over the budget</summary>")
}
