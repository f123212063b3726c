package engine

import (
	"fmt"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/field"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/sound"
	"blockfield/engine/sound/room"
)

// Hearing is what the panels of a design do to sound. It takes a thousand times
// as long as a Plan, which is why it is a result of its own.
type Hearing struct {
	Revision  string
	SpeedMS   float64 // of sound, in the middle of the room's temperatures
	Groups    []HeardGroup
	Room      room.Room // round the first wall
	Fit       room.Fit  // of the first group
	WatchOuts []check.WatchOut
}

// HeardGroup is one group of panels, heard as one arrangement.
type HeardGroup struct {
	Wall, Index int // from 0
	Path        string
	Arrangement sound.Arrangement
	Listening   sound.Listening
	Verdict     sound.Verdict
}

// Hear returns what the panels of a design do to sound, each group by itself.
// It returns an error for a design that design.Validate refuses.
func Hear(d design.Design) (Hearing, error) {
	groups, err := build(d)
	if err != nil {
		return Hearing{}, err
	}
	out := Hearing{Revision: d.Revision()}
	out.SpeedMS = speedMS(d.Room)
	for _, g := range groups {
		h, err := hear(g, out.SpeedMS)
		if err != nil {
			return Hearing{}, fmt.Errorf("design.%s: %w", g.Path, err)
		}
		out.Groups = append(out.Groups, h)
	}
	out.conclude(d, groups)
	return out, nil
}

// speedMS is the speed of sound in the middle of a room's temperatures.
func speedMS(r design.Room) float64 {
	return sound.SpeedMS((r.TemperatureLow + r.TemperatureHigh) / 2)
}

// conclude fills in what follows from the verdicts of all groups.
func (h *Hearing) conclude(d design.Design, groups []Group) {
	var area float64
	for i, g := range groups {
		at := sound.Place{
			WallPath: fmt.Sprintf("walls[%d]", g.Wall), GroupPath: g.Path, Wall: d.Walls[g.Wall],
		}
		h.WatchOuts = append(h.WatchOuts, h.Groups[i].Verdict.WatchOuts(at)...)
		area += fieldM2(g.Built)
	}
	h.Room = room.Round(d, area, h.SpeedMS)
	h.Fit = room.FitOf(d, h.Room, h.Groups[0].Verdict)
	h.WatchOuts = append(h.WatchOuts, h.Room.WatchOuts(d.Room)...)
	check.Sort(h.WatchOuts)
}

func fieldM2(g panel.Group) float64 {
	return g.FieldWidth.Metres() * g.FieldHeight.Metres() * float64(len(g.Panels))
}

func hear(g Group, speedMS float64) (HeardGroup, error) {
	a, facts, err := arrange(g)
	if err != nil {
		return HeardGroup{}, err
	}
	out := HeardGroup{Wall: g.Wall, Index: g.Index, Path: g.Path, Arrangement: a}
	out.Listening = sound.Listen(a, sound.Options{SpeedMS: speedMS})
	out.Verdict = sound.Judge(a, out.Listening, facts)
	return out, nil
}

// arrange returns the panels of a group as sound meets them, and what a verdict
// has to know of their pattern. Places are measured from the middle of the
// group, y upwards.
func arrange(g Group) (sound.Arrangement, sound.Facts, error) {
	b := g.Built
	grid, err := field.Lay(g.Design.Pattern, b.Columns, b.Rows, len(g.Design.Heights))
	if err != nil {
		return sound.Arrangement{}, sound.Facts{}, err
	}
	a := sound.Arrangement{Surface: sound.Surface{
		Columns: b.Columns, Rows: b.Rows, PitchM: b.Pitch.Metres(), GapM: g.Design.Block.Slack.Metres(),
	}}
	for _, h := range g.Design.Heights {
		a.HeightsM = append(a.HeightsM, h.Metres())
	}
	for _, level := range grid.Levels {
		a.Levels = append(a.Levels, uint16(level))
	}
	x0, y0 := b.TotalWidth.Half(), b.TotalHeight.Half()
	for _, p := range b.Panels {
		a.Modules = append(a.Modules, sound.Module{
			Turn: turnOf(p.Letter),
			XM:   middle(p.Left, b.OuterWidth, b.Left, x0),
			YM:   middle(p.Bottom, b.OuterHeight, b.Bottom, y0),
		})
	}
	return a, facts(g, grid), a.Validate()
}

// middle returns how far the middle of a panel is from that of its group.
func middle(edge, size, groupEdge, half length.Length) float64 {
	return edge.Add(size.Half()).Sub(groupEdge).Sub(half).Metres()
}

func turnOf(letter byte) sound.Turn {
	switch letter {
	case 'B':
		return sound.Counter
	case 'R':
		return sound.HalfTurn
	default:
		return sound.AsDesigned
	}
}

func facts(g Group, grid field.Grid) sound.Facts {
	f := sound.Facts{Heights: g.Design.Heights, Clump: 1, Repeats: grid.Repeats()}
	if g.Design.Pattern.Kind != design.Drawn {
		f.Clump = max(g.Design.Pattern.Clump, 1)
	}
	columns, rows := grid.Period()
	f.RepeatCells = columns
	if rows > 1 && grid.Rows/rows == f.Repeats && (columns <= 1 || grid.Columns/columns < f.Repeats) {
		f.RepeatCells = rows
	}
	return f
}
