package engine_test

import (
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"blockfield/engine/check"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// entry is one row of the register of checks in DEVELOPERS.md.
type entry struct {
	index                          int
	codes                          []string
	levels, gate, clearedBy, state string
}

// Numbers of the register: what a whole job is watched over by.
const (
	checksOfAJob = 54
	stagesOfAJob = 20
)

// ownCodes are checks of ours, in a sentence below the table.
var ownCodes = []string{"bench/board-too-short", "bench/saw-reach", "price/missing", "price/too-large", "price/book-lapsed", "price/book-early", "price/discount-limit", "price/discount-reason", "supply/by-others", "supply/kit", "supply/plan", "wall/below-floor", "wall/above-top", "wall/beyond-side", "wall/overlap", "wall/wider-than-room", "wall/higher-than-room"}

// register reads the two tables of DEVELOPERS.md: the checks, and the indices
// of the checks of each stage.
func register(t *testing.T) (checks []entry, stages [][]string) {
	t.Helper()
	text, err := os.ReadFile("../DEVELOPERS.md")
	require.NoError(t, err)
	_, section, ok := strings.Cut(string(text), "\n## Register of checks and stages\n")
	require.True(t, ok, "DEVELOPERS.md has no register")
	section, _, _ = strings.Cut(section, "\n## ")
	for _, code := range ownCodes {
		require.Contains(t, section, "`"+code+"`")
	}
	for line := range strings.Lines(section) {
		cells := strings.Split(strings.Trim(strings.TrimSpace(line), "|"), "|")
		for i := range cells {
			cells[i] = strings.TrimSpace(cells[i])
		}
		n, err := strconv.Atoi(cells[0])
		switch {
		case err != nil:
		case len(cells) == 8:
			e := entry{index: n, levels: strings.ToLower(cells[3]), gate: cells[4], clearedBy: cells[5], state: cells[7]}
			for _, code := range regexp.MustCompile("`([^`]+)`").FindAllStringSubmatch(cells[2], -1) {
				e.codes = append(e.codes, code[1])
			}
			checks = append(checks, e)
		case len(cells) == 4:
			require.Equal(t, len(stages)+1, n, "stages in order")
			stages = append(stages, strings.Split(cells[2], ", "))
		default:
			t.Errorf("a row of neither table: %s", line)
		}
	}
	return checks, stages
}

// Every check stands in the register once, in order, and belongs to one stage.
func TestRegisterIsWhole(t *testing.T) {
	checks, stages := register(t)
	require.Len(t, checks, checksOfAJob)
	require.Len(t, stages, stagesOfAJob)
	stageOf := map[string]int{}
	for _, indices := range stages {
		for _, i := range indices {
			stageOf[i]++
		}
	}
	delete(stageOf, "–")
	assert.Len(t, stageOf, checksOfAJob)
	seen := map[string]int{}
	for i, e := range checks {
		assert.Equal(t, i+1, e.index)
		assert.Equal(t, 1, stageOf[strconv.Itoa(e.index)], "check %d belongs to one stage", e.index)
		done, later := strings.HasPrefix(e.state, "done"), strings.HasPrefix(e.state, "later: ")
		assert.True(t, done || later || strings.HasPrefix(e.state, "by construction: "), "check %d: %s", e.index, e.state)
		assert.Equal(t, done, len(e.codes) > 0, "check %d: codes where it is done", e.index)
		if strings.Contains(e.levels, "stop") && (done || later) {
			assert.Contains(t, []string{"sign-off", "evidence"}, e.clearedBy, "check %d", e.index)
			assert.NotEqual(t, "–", e.gate, "check %d: a Stop shuts a gate", e.index)
		}
		for _, code := range e.codes {
			seen[code]++
			assert.Equal(t, 1, seen[code], code)
		}
	}
}

// What stands in the register is what the engine does.
func TestRegisterHoldsWhatFires(t *testing.T) {
	checks, _ := register(t)
	entries := map[string]entry{}
	for _, e := range checks {
		for _, code := range e.codes {
			entries[code] = e
		}
	}
	fired := map[string]bool{}
	for name, s := range everyState(t) {
		all := slices.Concat(planWith(t, s).AllWatchOuts(), heard(t, s))
		for _, w := range all {
			fired[w.Code] = true
			if slices.Contains(ownCodes, w.Code) {
				continue
			}
			e, ok := entries[w.Code]
			if !assert.True(t, ok, "%s: %s does not stand in the register", name, w.Code) {
				continue
			}
			assert.Contains(t, e.levels, w.Level.String(), w.Code)
			if w.Gate != check.NoGate || e.gate != "–" {
				assert.Contains(t, e.gate, string(w.Gate), w.Code)
				assert.NotEmpty(t, w.Gate, "%s: the register has %s", w.Code, e.gate)
			}
			if asked := w.Asked(); asked.Level == check.Stop {
				assert.Contains(t, e.levels, "stop", "%s: what is pending is a Stop some day", w.Code)
				assert.Equal(t, e.clearedBy == "evidence", asked.Evidence, w.Code)
			}
		}
		if trigger, ok := triggers[name]; ok {
			assert.Contains(t, codes(all), name, "after %s", trigger)
		}
		if today, ok := days[name]; ok {
			assert.Contains(t, codes(all), name, "on %s", today)
		}
	}
	language := english().Language
	for code := range entries {
		assert.True(t, language.Has(code), "%s has no sentence", code)
		assert.True(t, fired[code], "no design makes %s fire", code)
	}
	for _, code := range ownCodes {
		assert.True(t, fired[code], "no design makes %s fire", code)
	}
}

// Stops about load path, lifting, tipping and safety devices can be signed off
// by nobody.
func TestEvidenceInTheRegister(t *testing.T) {
	checks, _ := register(t)
	var evidence []int
	for _, e := range checks {
		if e.clearedBy == "evidence" {
			evidence = append(evidence, e.index)
		}
	}
	assert.Equal(t, []int{25, 28, 29, 30, 31, 32, 33, 36, 39}, evidence,
		"safe cells, hands, lift room, fixings, studs, hollow board, tipping, safety devices, lift lock")
}
