package calendar_test

import (
	"testing"
	"time"

	"blockfield/engine/calendar"

	"github.com/stretchr/testify/assert"
)

// Every day of nine hundred years as the standard library has it.
func TestAgainstLibrary(t *testing.T) {
	at := time.Date(1600, 1, 1, 0, 0, 0, 0, time.UTC)
	day := calendar.Of(1600, 1, 1)
	for at.Year() < 2500 {
		text := at.Format(time.DateOnly)
		got, ok := calendar.Parse(text)
		if !ok || got != day || day.String() != text || day.Weekday() != (int(at.Weekday())+6)%7 {
			t.Fatalf("%s: %d, %t, %v, %d", text, got, ok, day, day.Weekday())
		}
		at, day = at.AddDate(0, 0, 1), day+1
	}
	assert.Equal(t, "1970-01-01", calendar.Day(0).String())
}

func TestParseRefuses(t *testing.T) {
	for _, text := range []string{
		"", "2026-02-29", "2026-13-01", "2026-00-10", "2026-04-31", "26-04-01", "2026-4-1", "2026/04/01", "0000-01-01",
		"2026-04-1x", "+026-04-01", "2026-04-011", "２０２６-04-01",
	} {
		_, ok := calendar.Parse(text)
		assert.False(t, ok, text)
	}
	for _, text := range []string{"0001-01-01", "9999-12-31", "2024-02-29", "2000-02-29"} {
		d, ok := calendar.Parse(text)
		assert.True(t, ok, text)
		assert.Equal(t, text, d.String())
	}
}
