package engine

import (
	"math"

	"blockfield/engine/bench"
	"blockfield/engine/length"
	"blockfield/engine/words"
)

// Report is a Result for other programs, as JSON. Lengths and money are texts
// with their units or plain decimals; masses are kg, volumes litres and times
// hours, rounded to what can be meant.
type Report struct {
	Revision  string           `json:"revision"`
	BookCode  string           `json:"bookCode"`
	Title     string           `json:"title"`
	Field     FieldReport      `json:"field"` // of the first group
	Panel     PanelReport      `json:"panel"` // of the first group
	Groups    []GroupReport    `json:"groups"`
	Mass      MassReport       `json:"mass"`
	Stock     StockReport      `json:"stock"`
	Cuts      []CutsReport     `json:"cuts"` // of the blocks, by wood and section
	Hours     HoursReport      `json:"hours"`
	Money     MoneyReport      `json:"money"`
	WatchOuts []WatchOutReport `json:"watchOuts"`
}

// FieldReport is the grid of one group: columns and rows of one panel, cells
// and counts over all its panels.
type FieldReport struct {
	Columns int           `json:"columns"`
	Rows    int           `json:"rows"`
	Cells   int           `json:"cells"`
	Blocks  int           `json:"blocks"`
	Counts  []CountReport `json:"counts"`
}

// CountReport is how many cells have one height.
type CountReport struct {
	Height length.Length `json:"height"`
	Cells  int           `json:"cells"`
}

// PanelReport is the size of one panel of a group.
type PanelReport struct {
	OuterWidth  length.Length `json:"outerWidth"`
	OuterHeight length.Length `json:"outerHeight"`
	FieldWidth  length.Length `json:"fieldWidth"`
	FieldHeight length.Length `json:"fieldHeight"`
	Stack       length.Length `json:"stack"`
	FrameDepth  length.Length `json:"frameDepth"`
}

// GroupReport is one group of panels with the parts of its first panel.
type GroupReport struct {
	Path   string       `json:"path"`
	Panels int          `json:"panels"`
	Field  FieldReport  `json:"field"`
	Panel  PanelReport  `json:"panel"`
	Parts  []PartReport `json:"parts"`
}

// PartReport is one built part, all its pieces together.
type PartReport struct {
	Name   string        `json:"name"`
	Count  int           `json:"count"`
	Width  length.Length `json:"width"`
	Height length.Length `json:"height"`
	Depth  length.Length `json:"depth"`
	Kg     float64       `json:"kg"`
}

// MassReport is with glue and finish.
type MassReport struct {
	HeaviestPanelKg float64 `json:"heaviestPanelKg"`
	TotalKg         float64 `json:"totalKg"`
}

// StockReport is what is bought.
type StockReport struct {
	Sticks       int     `json:"sticks"`
	Sheets       int     `json:"sheets"`
	OwnSheets    int     `json:"ownSheets,omitempty"` // that are there and are cut
	GlueKg       float64 `json:"glueKg"`
	FinishLitres float64 `json:"finishLitres"`
	CleatScrews  int     `json:"cleatScrews"`
	WallFixings  int     `json:"wallFixings"`
}

// CutsReport is how the blocks of one wood and section come out of sticks.
type CutsReport struct {
	Wood   string             `json:"wood"`
	Size   length.Length      `json:"size"`
	Bought int                `json:"bought"`                 // with those for knots and splits
	Own    int                `json:"own"`                    // that are there already
	Sticks int                `json:"sticks"`                 // that are cut
	Proven bool               `json:"proven"`                 // no plan of sound sticks costs less than that with the fewest of them
	Gap    float64            `json:"gapPercent,omitempty"`   // how far that plan can be from the cheapest
	Longer bool               `json:"longerSearch,omitempty"` // it comes out of a longer search
	Visits int                `json:"visits"`                 // sticks that are set aside and fetched again
	Groups []StickGroupReport `json:"groups"`
}

// StickGroupReport is a number of sticks that are cut alike.
type StickGroupReport struct {
	Stick  length.Length  `json:"stick"`
	Count  int            `json:"count"`
	Blocks []BlocksReport `json:"blocks"` // from each
	Offcut length.Length  `json:"offcut"`
}

// BlocksReport is so many blocks of one height.
type BlocksReport struct {
	Height length.Length `json:"height"`
	Count  int           `json:"count"`
}

// SpreadReport is person-hours: a practised maker, a usual job, a first one.
type SpreadReport struct {
	Low     float64 `json:"low"`
	Typical float64 `json:"typical"`
	High    float64 `json:"high"`
}

// HoursReport is person-hours by role.
type HoursReport struct {
	Shop   SpreadReport `json:"shop"`
	Office SpreadReport `json:"office"`
	Site   SpreadReport `json:"site"`
	Travel SpreadReport `json:"travel"`
	Total  SpreadReport `json:"total"`
}

// WatchOutReport is one watch-out with its sentence in English.
type WatchOutReport struct {
	Code     string        `json:"code"`
	Level    string        `json:"level"`
	Gate     string        `json:"gate,omitempty"`
	Evidence bool          `json:"evidence,omitempty"` // only evidence clears it, never a signature
	Private  bool          `json:"private,omitempty"`  // holds figures of the price book
	Field    string        `json:"field,omitempty"`
	Sentence string        `json:"sentence"`
	Source   string        `json:"source"`
	Fix      *FixReport    `json:"fix,omitempty"`
	Signed   *SignedReport `json:"signed,omitempty"` // a Stop that somebody took upon themselves: a caution now
}

// SignedReport is who has signed a Stop off, why and on which day.
type SignedReport struct {
	Name   string `json:"name"`
	Reason string `json:"reason"`
	Day    string `json:"day"`
}

// FixReport is the smallest edit that clears a watch-out.
type FixReport struct {
	Path  string `json:"path"`
	Value string `json:"value"`
}

// Report returns what a Result says to other programs.
func (r Result) Report(reader words.Reader) Report {
	out := Report{
		Revision: r.Revision, BookCode: r.BookCode, Title: r.Title,
		Mass:      MassReport{round(r.Mass.HeaviestPanelKg, 2), round(r.Mass.TotalKg, 2)},
		Stock:     r.stock(),
		Cuts:      r.cuts(),
		Hours:     hours(r.Bill.Hours),
		Money:     r.money(reader),
		WatchOuts: []WatchOutReport{},
	}
	for _, g := range r.Groups {
		out.Groups = append(out.Groups, groupReport(g))
	}
	out.Field, out.Panel = out.Groups[0].Field, out.Groups[0].Panel
	for _, w := range r.AllWatchOuts() {
		line := WatchOutReport{
			Code: w.Code, Level: w.Level.String(), Gate: string(w.Gate),
			Evidence: w.Evidence, Private: w.Private, Field: w.Field,
			Sentence: reader.Say(w.Code, w.Args), Source: reader.Given(w.Source),
		}
		if w.Fix != nil {
			line.Fix = &FixReport{w.Fix.Path, w.Fix.Value}
		}
		if w.Signed != nil {
			line.Signed = &SignedReport{w.Signed.Name, w.Signed.Reason, w.Signed.Day}
		}
		out.WatchOuts = append(out.WatchOuts, line)
	}
	return out
}

func groupReport(g Group) GroupReport {
	b := g.Built
	out := GroupReport{
		Path: g.Path, Panels: len(b.Panels),
		Field: FieldReport{Columns: b.Columns, Rows: b.Rows},
		Panel: PanelReport{b.OuterWidth, b.OuterHeight, b.FieldWidth, b.FieldHeight, b.Stack, b.FrameDepth},
	}
	for k, n := range b.Counts {
		out.Field.Counts = append(out.Field.Counts, CountReport{g.Design.Heights[k], n})
		out.Field.Cells += n
	}
	for _, p := range b.Panels {
		out.Field.Blocks += p.Blocks
	}
	for _, p := range b.Panels[0].Parts {
		out.Parts = append(out.Parts, PartReport{p.Name, p.Count, p.Width, p.Height, p.Depth, round(p.MassKg, 3)})
	}
	return out
}

func (r Result) stock() StockReport {
	out := StockReport{
		GlueKg: round(r.Bill.GlueKg, 3), CleatScrews: r.Bill.CleatScrews, WallFixings: r.Bill.WallFixings,
	}
	for _, lot := range r.Bill.Lots {
		out.Sticks += lot.Sticks
	}
	for _, s := range r.Bill.Sheets {
		out.Sheets += s.Count
		out.OwnSheets += s.Plan.Own
	}
	for _, f := range r.Bill.Finishes {
		out.FinishLitres += f.Litres
	}
	out.FinishLitres = round(out.FinishLitres, 3)
	return out
}

func (r Result) cuts() []CutsReport {
	all := []CutsReport{}
	for _, lot := range r.Bill.Lots {
		c := CutsReport{
			Wood: lot.Wood, Size: lot.Size, Bought: lot.Sticks, Own: lot.OwnSticks, Sticks: lot.SticksBeforeDefects,
			Proven: lot.Proven, Gap: round(lot.GapPercent, 3), Longer: r.Bill.Longer, Visits: lot.Cuts.Visits,
		}
		for _, b := range lot.Cuts.Boards {
			n := lot.StickLength.Notation()
			g := StickGroupReport{Stick: lot.Bars[b.Bar].Length, Count: b.Count, Offcut: length.Nanometres(b.Offcut, n)}
			for _, p := range b.Pieces {
				g.Blocks = append(g.Blocks, BlocksReport{lot.HeightOf(p.Length), p.Count})
			}
			c.Groups = append(c.Groups, g)
		}
		all = append(all, c)
	}
	return all
}

func hours(h bench.Hours) HoursReport {
	spread := func(s bench.Spread) SpreadReport {
		return SpreadReport{round(s.Low, 2), round(s.Typical, 2), round(s.High, 2)}
	}
	return HoursReport{spread(h.Shop), spread(h.Office), spread(h.Site), spread(h.Travel), spread(h.Total)}
}

func round(v float64, digits int) float64 {
	scale := math.Pow10(digits)
	return math.Round(v*scale) / scale
}
