package session_test

import (
	"strings"
	"testing"

	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The days follow from what is typed: forwards from a start, backwards from a need; a
// date that is none is refused where it was typed.
func TestDays(t *testing.T) {
	s := atTheBench(t, "s2")
	ask(t, s, session.Request{Op: "section", Name: "bench", Today: "2026-01-05"})
	said := fragment(set(t, s, "record.days.start", "2026-03-02"), "shop-days-said")
	assert.Contains(t, said, "With the sticks there on Mon 2026-03-02 it is ready on ")
	assert.Contains(t, said, "What decides when it is ready: Sort, sand faces, ")
	assert.Contains(t, said, "With 2 people at the bench it is ready ")
	require.Equal(t, 1, strings.Count(said, "<svg"))
	assert.Contains(t, said, `class="task decides"`)
	assert.Contains(t, said, `class="waits"`)
	assert.Contains(t, said, ">03-09<", "a Monday on the scale")

	late := set(t, s, "record.days.needBy", "2026-03-09")
	assert.Contains(t, fragment(late, "watch-outs"), "wanted by 2026-03-09")
	set(t, s, "record.days.needBy", "2026-05-29")
	said = fragment(set(t, s, "record.days.start", ""), "shop-days-said")
	assert.Contains(t, said, "To be ready by Fri 2026-05-29 the sticks have to be there on ")

	bad := set(t, s, "record.days.needBy", "2026-02-30")
	assert.False(t, bad.OK)
	assert.Equal(t, "record.days.needBy", bad.Faults[0].Path)
	assert.Contains(t, bad.Faults[0].Message, "not a day of the calendar")
	assert.False(t, set(t, s, "record.days.people", "5").OK)
	assert.Contains(t, fragment(set(t, s, "record.days.people", "4"), "shop-days-said"), "ready on")
}

// At home the work is done on free days.
func TestWeekendsAtHome(t *testing.T) {
	s := atTheBench(t, "s8")
	require.True(t, set(t, s, "view.reading", "builder").OK)
	ask(t, s, session.Request{Op: "section", Name: "bench", Today: "2026-03-02"})
	said := fragment(set(t, s, "record.days.hoursPerDay", "5"), "shop-days-said")
	assert.Contains(t, said, "With what settles and dries between them it takes")
	assert.Contains(t, said, "Weigh, look over")
}

// Tools that are ticked say what can be cut and how long it takes; hours and weekends
// follow everywhere.
func TestToolsAtHand(t *testing.T) {
	s := atTheBench(t, "s8")
	require.True(t, set(t, s, "view.reading", "builder").OK)
	ask(t, s, session.Request{Op: "section", Name: "bench"})
	first := html(ask(t, s, session.Request{Op: "section", Name: "bench"}))
	assert.Contains(t, first, "reckoned with hand tools, 1.60 times")
	assert.Contains(t, first, "× 1.6 for a first time")
	work(t, s, "tool", "mitre saw")
	work(t, s, "tool", "stop block")
	res := work(t, s, "tool", "sander")
	assert.Equal(t, []string{"mitre saw", "stop block", "sander"}, kept(t, res).Tools)
	shown := html(res)
	assert.Contains(t, shown, "no block shorter than 25 mm")
	assert.Contains(t, shown, "Too short for that: 14 mm")
	assert.Contains(t, shown, "All of it takes 1.35 times")
	assert.Contains(t, shown, "ready-made hanging strip")
	assert.Contains(t, shown, "× 1.35 for a first time")
	assert.Contains(t, shown, "86 / 62 / 38 / 14 mm from the blade")
	assert.Contains(t, shown, "875.1 mm apart")
	res = work(t, s, "tool", "clamped carrier")
	assert.NotContains(t, html(res), "Too short for that")
	assert.Equal(t, []string{"mitre saw", "stop block", "clamped carrier"}, kept(t, work(t, s, "tool", "sander")).Tools, "and off again")
	assert.Equal(t, 3, len(kept(t, work(t, s, "tool", "laser")).Tools), "no such tool")
	assert.NotContains(t, read(t, s, "maker", "bench"), "Tools at hand")
}
