package engine

import (
	"blockfield/engine/bench"
	"blockfield/engine/cost"
	"blockfield/engine/design"
)

// quantities is the bill in the whole steps that enter money, so that native
// and browser agree to the cent.
func quantities(d design.Design, b bench.Bill) cost.Quantities {
	q := cost.Quantities{
		OwnBuild:    d.Work.OwnBuild,
		CleatMM3:    cost.Steps(b.Cleat.BoughtM3, cost.MM3PerM3),
		GlueG:       cost.Steps(b.GlueKg, cost.GPerKg),
		CleatScrews: b.CleatScrews, WallFixings: b.WallFixings, Brads: b.Brads,
		CutBlocks: b.CutBlocks, Panels: b.Panels,
		Shop: seconds(b.Hours.Shop), Office: seconds(b.Hours.Office),
		Site: seconds(b.Hours.Site), Travel: seconds(b.Hours.Travel),
		RoadM:    cost.Steps(b.RoadKm, cost.MPerKm),
		Surveyed: d.Work.Survey,
	}
	switch d.Work.Scope() {
	case design.KitScope: // the client buys what goes with the blocks
		b.Frame, b.Sheets, b.Finishes = nil, nil, nil
		q.CleatMM3, q.GlueG, q.CleatScrews, q.WallFixings, q.Brads = 0, 0, 0, 0, 0
	case design.PlanScope:
		b.Lots, b.Frame, b.Sheets, b.Finishes = nil, nil, nil, nil
		q.CleatMM3, q.GlueG, q.CleatScrews, q.WallFixings, q.Brads, q.CutBlocks, q.Panels = 0, 0, 0, 0, 0, 0, 0
	}
	for _, t := range b.Tasks {
		q.Tasks = append(q.Tasks, cost.Task{
			By: cost.Worker(t.Role), Low: minutes(t.Minutes.Low), Typical: minutes(t.Minutes.Typical), High: minutes(t.Minutes.High),
		})
	}
	for _, lot := range b.Lots {
		q.Squares = append(q.Squares, sticks(lot)...)
	}
	for _, f := range b.Frame {
		q.Boards = append(q.Boards, timber(f.Wood, f.BoughtM3))
	}
	for _, s := range b.Sheets {
		if s.Count == 0 {
			continue // all come out of what is there
		}
		q.Sheets = append(q.Sheets, cost.Sheet{Sheet: s.Sheet, Thickness: s.Thickness, Count: s.Count})
	}
	for _, f := range b.Finishes {
		q.Finishes = append(q.Finishes, cost.Finish{Finish: f.Finish, VolumeML: cost.Steps(f.Litres, cost.MLPerLitre)})
	}
	return q
}

// sticks are those of a lot that are bought, by their length.
func sticks(lot bench.Lot) []cost.Timber {
	var all []cost.Timber
	for _, bar := range lot.Bars {
		if bar.Bought > 0 {
			t := timber(lot.Wood, float64(bar.Bought)*bar.Length.Metres()*lot.Size.Metres()*lot.Size.Metres())
			t.Size, t.Length, t.Count = lot.Size, bar.Length, int64(bar.Bought)
			all = append(all, t)
		}
	}
	return all
}

func timber(wood string, m3 float64) cost.Timber {
	return cost.Timber{Wood: wood, VolumeMM3: cost.Steps(m3, cost.MM3PerM3)}
}

// seconds are those of usual work.
func seconds(hours bench.Spread) int64 { return cost.Steps(hours.Typical, cost.SecondsPerHour) }

func minutes(m float64) int64 { return cost.Steps(m, cost.SecondsPerMinute) }
