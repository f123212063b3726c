package engine_test

import (
	"os"
	"strings"
	"testing"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/words"

	"github.com/stretchr/testify/require"
)

func english() words.Reader { return words.Reader{Language: words.English(), Units: length.Metric} }

// state is a design beside a price book and, where it has one, a record of the work.
type state struct {
	design.Document
	book   design.Book
	today  string
	record *design.Record
}

// works are what is done on the first design to make what watches over the work fire.
var works = map[string]func(engine.Job) design.Record{
	"record/not-counted": func(j engine.Job) design.Record { return j.Ticked(j.Cards[0], true) },
	"record/bin-short": func(j engine.Job) design.Record {
		j.Record = j.Counted(0, 1, 0)
		return j.Ticked(j.Cards[0], true)
	},
	"price/changed-after-lock": func(j engine.Job) design.Record {
		j.Record.Lock = &design.Lock{Revision: "000000", Currency: "EUR"}
		return j.Record
	},
	"days/late": func(j engine.Job) design.Record {
		j.Record.Days.Start, j.Record.Days.NeedBy = "2026-03-02", "2026-03-09"
		return j.Record
	},
	"days/not-cured": func(j engine.Job) design.Record {
		j.Record.Days.Start, j.Record.Days.Hang = "2026-03-02", "2026-03-16"
		return j.Record
	},
	"wall/weighed-off": func(j engine.Job) design.Record {
		j.Record.Weighed[0].Kg = 50
		return j.Record
	},
	"record/weighed-other": func(j engine.Job) design.Record {
		j.Record.Weighed[0].Kg, j.Record.Weighed[0].Reckoned = 50, 45
		return j.Record
	},
	"wall/fire-answer": func(j engine.Job) design.Record {
		j.Record.Asked.Fire = "B. Warden, 3 May: class C"
		return j.Record
	},
	"wall/professional": func(j engine.Job) design.Record {
		j.Record.Asked = looked()
		return j.Noted("asked.lookedAt")
	},
	"wall/professional-old": func(j engine.Job) design.Record {
		j.Record.Asked = looked()
		j.Record.Asked.LookedFor = "000000"
		return j.Record
	},
	"wall/safety-allowed": func(j engine.Job) design.Record {
		j.Record.Asked.Devices = "B. Warden, 3 May"
		return j.Noted("asked.devices")
	},
	"days/cure-unknown": func(j engine.Job) design.Record {
		j.Record.Days.Start, j.Record.Days.Hang = "2026-03-02", "2027-03-01"
		return j.Record
	},
	"record/other-paper": func(j engine.Job) design.Record {
		j.Record.Lay.Paper = "000000"
		return j.Record
	},
	"record/other-rows": func(j engine.Job) design.Record {
		rec := j.Ticked(j.Cards[0], true)
		rec.Rows[0].Field = "000000"
		return rec
	},
}

// looked is what an invented professional has looked at.
func looked() design.Asked {
	return design.Asked{Professional: "A. Beam", Licence: "Beam & Post, no. 12", LookedOn: "2026-03-02", LookedAt: "studs, strip, screws"}
}

// triggers are edits of the first design, each line "path = value", that make
// one check fire which the worked jobs leave alone.
var triggers = map[string]string{
	"price/discount-limit":    "money.discount = 11",
	"price/discount-reason":   "money.discount = 1",
	"supply/by-others":        "work.hung = no",
	"supply/kit":              "work.supply = kit",
	"supply/plan":             "work.supply = plan",
	"bench/board-too-short":   "bench.boardLength = 1200 mm",
	"bench/cold-shop":         "bench.temperature = 9.5",
	"bench/finished-bases":    group + "finish.when = before gluing",
	"bench/saw-reach":         "bench.trim = through the blocks",
	"bench/split":             group + "wood = oak\n" + group + "columns = 0\n" + group + "width = 1600 mm",
	"bench/glue-skins":        "bench.glueOpenMinutes = 7",
	"bench/one-a-sheet":       group + "panelsWide = 2\n" + group + "rows = 34",
	"bench/sheet-too-small":   group + "columns = 0\n" + group + "width = 2500 mm\n" + group + "height = 1300 mm",
	"bench/sheets-too-small":  group + "columns = 400\n" + group + "rows = 100",
	"bench/short-tail":        "bench.carrier = no\nbench.holdTail = 149 mm",
	"bench/tiny-block":        group + "heights = 11.9, 42, 64, 92",
	"bench/waste":             "bench.stickLength = 900 mm\nbench.holdTail = 300 mm",
	"frame/less-reveal":       group + "frame.board = 126 mm",
	"frame/too-shallow":       group + "frame.board = 121 mm",
	"measure/drift":           group + "columns = 150\n" + group + "rows = 10",
	"moisture/frame-gap":      group + "frame.gap = 1.9 mm",
	"moisture/growth":         group + "block.slack = 0.05 mm",
	"moisture/growth-beyond":  group + "wood = beech\nbench.stockMoisture = 5\nroom.humidityHigh = 95",
	"moisture/stock":          "bench.stockMoisture = 12",
	"pattern/repeats":         group + "pattern.kind = quadratic residue\n" + group + "pattern.order = 5",
	"pattern/uneven-shares":   group + "pattern.kind = quadratic residue\n" + group + "pattern.order = 7",
	"price/below-floor":       "money.discount = 15",
	"price/below-minimum":     group + "columns = 2\n" + group + "rows = 2\nmoney.discount = 5",
	"price/deposit":           group + "wood = walnut",
	"price/goods-over-budget": "work.ownBuild = yes\nmoney.budget = 50",
	"price/too-large":         "work.crew = 3",
	"price/missing":           group + "backer.thickness = 15 mm",
	"sound/flat-board-high":   group + "heights = 20, 44, 68, 92",
	"sound/flat-board-low":    group + "heights = 20, 44, 68, 92\n" + group + "block.size = 20 mm",
	"sound/never-most":        thinSticks + "26, 30, 33, 66",
	"sound/no-bass":           "room.goals = boomy, look",
	"sound/no-insulation":     "room.goals = neighbours",
	"sound/small-range":       group + "heights = 40, 50, 60, 75",
	"sound/small-room":        "room.length = 3000 mm\nroom.width = 2500 mm",
	"sound/spreads-nothing":   group + "heights = 26, 26.5, 27, 27.5",
	"sound/too-near":          "walls[0].listenerDistance = 1499 mm",
	"sound/treble-only":       thinSticks + "26, 36, 60, 66",
	"wall/board-alone":        "walls[0].studStep = 0 mm",
	"wall/heat":               obstacle + "kind = radiator",
	"wall/not-known":          "walls[0].kind = unknown",
	"wall/no-fixing":          "walls[0].kind = no fixing allowed",
	"wall/outside":            "walls[0].outside = yes",
	"wall/sun":                "walls[0].sun = yes",
	"wall/no-lock":            group + "cleat.lock = none",
	"wall/rated-overloaded": "walls[0].kind = brick\nwalls[0].fixing.ratedShear = 0.001\nwalls[0].fixing.ratedPull = 0.001\n" +
		"walls[0].fixing.what = Plug in brick\nwalls[0].fixing.source = Invented",
	"wall/safety-device":  obstacle + "kind = sprinkler",
	"wall/above-top":      group + "place.height = 2000 mm",
	"wall/below-floor":    group + "place.edge = top\n" + group + "place.height = 100 mm",
	"wall/overlap":        "walls[0].groups = +",
	"wall/beyond-side":    group + "place.left = 3000 mm",
	"wall/below-ears":     group + "place.height = 100 mm",
	"wall/hands-to-carry": group + "place.height = 300 mm\nwork.crew = 1",
	"wall/lift-named": group + "width = 2000 mm\n" + group + "wood = oak\n" +
		"work.lifting.method = panel lifter\nwork.lifting.lead = The fitter",
	"wall/lifting-method": group + "width = 2000 mm\n" + group + "wood = oak",
	"wall/low-factor":     "walls[0].fixing.loadFactor = 3\nwalls[0].fixing.reason = Locked plant room",
	"wall/factor-unsaid":  "walls[0].fixing.loadFactor = 3",
	"wall/walkway":        "walls[0].walkway = yes",
	"wall/bowed":          "walls[0].bow = 5.5 mm",
	"wall/seismic":        "room.seismic = yes",

	"wall/higher-than-room": "room.height = 2400 mm",
	"wall/way-in":           "wayIn.vehicle = 1200 mm",
}

const group = "walls[0].groups[0]."

// obstacle is a new one, 200 mm under the panel, to be given its kind.
const obstacle = "walls[0].obstacles = +\nwalls[0].obstacles[0].x = 1500 mm\nwalls[0].obstacles[0].y = 600 mm\nwalls[0].obstacles[0]."

const thinSticks = group + "block.size = 18 mm\n" + group + "pattern.clump = 1\n" + group + "heights = "

// days make what depends on the day fire, with a book and an offer of another
// design that both hold in the first half of 2026.
var days = map[string]string{
	"price/book-lapsed":   "2026-07-01",
	"price/book-early":    "2025-12-31",
	"price/offer-lapsed":  "2026-07-01",
	"price/offer-changed": "2026-06-30",
	"price/order-changed": "2026-06-30",
}

// begun are designs that records of works belong to, where it is not the first one.
var begun = map[string]string{
	"wall/fire-answer":    "room.public = yes",
	"wall/safety-allowed": obstacle + "kind = sprinkler",
}

// books change the book of a trigger.
var books = map[string]func(*design.Book){
	"price/below-minimum": func(b *design.Book) { b.Policy.MinimumCharge = design.Units(5000) },
	"price/too-large": func(b *design.Book) {
		b.Rates.Shop, b.Currency = design.Units(1_000_000_000), "EUR"
		for i := range b.Tasks {
			b.Tasks[i].Typical, b.Tasks[i].High = 10_000, 10_000
		}
	},
	"price/deposit": func(b *design.Book) { b.Stages[0].Percent = 15 },
}

// everyState is the first design, the worked jobs in both states, and one
// design for each trigger.
func everyState(t testing.TB) map[string]state {
	t.Helper()
	all := map[string]state{"default": {design.Default(), design.DefaultBook(), "", nil}}
	files, err := os.ReadDir("../testdata/scenarios")
	require.NoError(t, err)
	for _, f := range files {
		name := strings.TrimSuffix(f.Name(), ".json")
		doc := design.Default()
		doc.Design = designtest.Job(t, name)
		all[name] = state{doc, design.DefaultBook(), "", nil}
	}
	for code, today := range days {
		s := state{design.Default(), design.DefaultBook(), today, nil}
		s.book.ValidFrom, s.book.ValidUntil = "2026-01-01", "2026-06-30"
		s.Offer = &design.Offer{Revision: "000000", BookCode: "000000", Currency: "EUR", ValidUntil: "2026-06-30"}
		if code == "price/order-changed" {
			s.Offer.Agreed = "2026-03-02"
		}
		all[code] = s
	}
	for code, work := range works {
		s := all["default"]
		if code == "days/cure-unknown" {
			s.Document = edit(t, s.Document, group+"finish.kind = fire-retardant varnish\n"+group+"finish.coats = 2")
		}
		if edits, ok := begun[code]; ok {
			s.Document = edit(t, s.Document, edits)
		}
		rec := work(engine.Follow(s.Design, planWith(t, s), design.NewRecord(), ""))
		s.record = &rec
		all[code] = s
	}
	for code, edits := range triggers {
		s := state{design.Default(), design.DefaultBook(), "", nil}
		s.Document = edit(t, s.Document, edits)
		if change, ok := books[code]; ok {
			change(&s.book)
		}
		all[code] = s
	}
	return all
}

// edit types one line after another, "path = value", or "list = +" for a new part.
func edit(t testing.TB, doc design.Document, lines string) design.Document {
	t.Helper()
	for line := range strings.Lines(lines) {
		path, value, ok := strings.Cut(strings.TrimSpace(line), " = ")
		require.True(t, ok, line)
		var err error
		if value == "+" {
			doc, _, err = design.Add(doc, path)
		} else {
			doc, err = design.Set(doc, path, value, length.Metric)
		}
		require.NoError(t, err, line)
	}
	return doc
}
