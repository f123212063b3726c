package engine_test

import (
	"testing"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// follow plans a worked job and follows it with a record.
func follow(t testing.TB, d design.Design, rec design.Record) engine.Job {
	t.Helper()
	require.NoError(t, design.ValidateRecord(rec))
	return engine.Follow(d, plan(t, d), rec, "")
}

func TestTicks(t *testing.T) {
	d := designtest.Job(t, "s7")
	job := follow(t, d, design.NewRecord())
	require.Len(t, job.Cards, 5*59)
	assert.Zero(t, job.At())
	assert.Zero(t, job.LaidRows())

	// Every second row of the second panel, and then none of them.
	for i := 59; i < 2*59; i += 2 {
		job = follow(t, d, job.Ticked(job.Cards[i], true))
	}
	assert.Equal(t, 30, job.LaidRows())
	require.Len(t, job.Record.Rows, 1)
	assert.Equal(t, design.Rows{
		Wall: 1, Group: 1, Panel: 2, Laid: job.Record.Rows[0].Laid,
		Revision: job.Plan.Revision, Field: job.Record.Rows[0].Field,
	}, job.Record.Rows[0])
	for i, c := range job.Cards {
		assert.Equal(t, i >= 59 && i < 2*59 && i%2 == 1, job.Laid(c), "card %d", i)
	}
	assert.Equal(t, 30, job.Panel(job.Cards[60]).Laid)
	again := job.Ticked(job.Cards[59], true)
	assert.Equal(t, job.Record, again, "a row is laid once")
	for i := 59; i < 2*59; i += 2 {
		job = follow(t, d, job.Ticked(job.Cards[i], false))
	}
	assert.Zero(t, job.LaidRows())
}

// Going on and back stays within the cards, also where the design has become
// smaller since.
func TestMovingThroughTheCards(t *testing.T) {
	d := designtest.Job(t, "s8")
	job := follow(t, d, design.NewRecord())
	assert.Equal(t, 1, job.Moved(-1).Lay.At)
	job = follow(t, d, job.Moved(13))
	assert.Equal(t, 13, job.At())
	assert.Equal(t, 14, job.Moved(1).Lay.At, "14 rows")
	rec := design.NewRecord()
	rec.Lay.At = 300
	job = follow(t, d, rec)
	assert.Equal(t, 13, job.At())
	assert.Equal(t, 13, job.Moved(-1).Lay.At)
}

// Rows that were laid from other cards are not taken for rows of these; what only
// hangs elsewhere, or is painted otherwise, has the same cards.
func TestOtherCards(t *testing.T) {
	doc := design.Default()
	job := follow(t, doc.Design, design.NewRecord())
	first := job.Cards[0]
	rec := job.Ticked(first, true)
	laidFrom := job.Plan.Revision

	for path, stale := range map[string]bool{
		"place.left": false, "finish.coats": false, "pattern.seed": true, "heights": true, "wood": true, "block.slack": true,
	} {
		values := map[string]string{
			"place.left": "900 mm", "finish.coats": "3", "pattern.seed": "2", "heights": "26, 42, 64, 90", "wood": "oak",
			"block.slack": "0.25 mm",
		}
		other, err := design.Set(doc, group+path, values[path], length.Metric)
		require.NoError(t, err)
		now := follow(t, other.Design, rec)
		c := now.Cards[0]
		assert.Equal(t, stale, now.Panel(c).Stale, path)
		assert.Equal(t, laidFrom, now.Panel(c).Revision, path)
		assert.Equal(t, !stale, now.Laid(c), path)
		if !stale {
			continue
		}
		assert.Equal(t, rec.Rows, now.Ticked(c, true).Rows, "%s: nothing is ticked on the old rows", path)
		anew := follow(t, other.Design, now.Anew(c))
		assert.Zero(t, anew.Panel(c).Laid)
		assert.Equal(t, 1, follow(t, other.Design, anew.Ticked(c, true)).LaidRows())
	}
}

// From the other edge the same rows are laid.
func TestTicksDoNotDependOnTheStartEdge(t *testing.T) {
	d := designtest.Job(t, "s5")
	job := follow(t, d, design.NewRecord())
	rec := job.Ticked(job.Cards[0], true)
	rec.Lay.Start = design.TopEdge
	job = follow(t, d, rec)
	last := job.Cards[len(job.Cards)-1]
	assert.True(t, job.Laid(last))
	assert.Equal(t, 1, job.LaidRows())
}
