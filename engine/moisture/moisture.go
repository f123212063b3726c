// Package moisture works out what damp and dry air do to a field of blocks: how
// far the wood grows and shrinks between the stock that is glued and the room that
// it hangs in, whether the slack between the blocks takes that up, how much air the
// frame needs, and how long sticks should settle.
//
// Wood at rest in a room has the moisture that EMC of package wood gives: the
// driest at the highest temperature and the lowest humidity, the dampest at the
// lowest temperature and the highest humidity. Movement is that of the Wood
// Handbook (FPL-GTR-190, chapter 13): ΔD = D·C·ΔM, with the coefficient per percent
// of its table 13-5, which holds from 6 to 14 % of moisture. Blocks stand with
// their rings in all directions, so C is the mean of radial and tangential.
//
// The field is taken to swell freely. Glued to plywood, which moves about a tenth
// as much, it really grows less and pushes instead: what is worked out here is
// what the joints should leave room for.
//
// Moisture is in percent of the oven-dry mass, sizes and movements in mm.
package moisture

import (
	"math"

	"blockfield/engine/design"
	"blockfield/engine/wood"
)

// Range is the moisture at which wood comes to rest in a room over a year.
type Range struct{ Low, High float64 }

// RangeOf is the range of a room.
func RangeOf(room design.Room) Range {
	return Range{
		Low:  wood.EMC(room.TemperatureHigh, room.HumidityLow),
		High: wood.EMC(room.TemperatureLow, room.HumidityHigh),
	}
}

// Middle is the moisture half way between the ends.
func (r Range) Middle() float64 { return (r.Low + r.High) / 2 }

// Change returns by how many mm a size across the grain grows from one moisture to
// another, for a coefficient per percent; it is negative where the wood shrinks.
func Change(sizeMM, perPercent, from, to float64) float64 {
	return sizeMM * float64(perPercent*(to-from))
}

// The moistures between which the handbook's coefficients hold.
const (
	lowestPct  = 6
	highestPct = 14
)

// Movement is what a year does to the longer side of one field.
type Movement struct {
	Wood     string // of two, the one that moves more: the whole side is taken to be of it
	Room     Range
	StockPct float64
	SideMM   float64 // the longer side of the field
	Cells    int     // along it
	GrowthMM float64 // from the stock to the dampest; 0 where the stock is wetter
	ShrinkMM float64 // from the stock to the driest; 0 where the stock is drier
	SlackMM  float64 // room that all joints along the side leave together

	// Beyond says that an end of the range, or the stock, lies where the handbook
	// has no coefficient: the movement is carried on in a straight line.
	Beyond bool
}

// Of returns the movement of a group's fields. It returns false for a wood that
// nobody knows, which design.Validate has refused before.
func Of(room design.Room, bench design.Bench, g design.Group) (Movement, bool) {
	most, c := "", 0.0
	for _, name := range g.Woods() {
		species, ok := wood.Find(name)
		if !ok {
			return Movement{}, false
		}
		if own := species.MovementMean(); most == "" || own > c {
			most, c = name, own
		}
	}
	columns, rows := g.Grid()
	width, height := g.Field()
	m := Movement{
		Wood: most, Room: RangeOf(room), StockPct: bench.StockMoisture,
		SideMM: math.Max(width.Millimetres(), height.Millimetres()),
		Cells:  max(columns, rows),
	}
	m.SlackMM = g.Block.Slack.Times(m.Cells).Millimetres()
	m.GrowthMM = math.Max(0, Change(m.SideMM, c, m.StockPct, m.Room.High))
	m.ShrinkMM = math.Max(0, -Change(m.SideMM, c, m.StockPct, m.Room.Low))
	m.Beyond = math.Min(m.Room.Low, m.StockPct) < lowestPct || math.Max(m.Room.High, m.StockPct) > highestPct
	return m, true
}

// JointMM is how wide each joint stands open when the room is driest.
func (m Movement) JointMM() float64 { return (m.SlackMM + m.ShrinkMM) / float64(m.Cells) }

// Limits of the checks. Common practice, no source.
const (
	offPoints  = 2   // of moisture between stock and the middle of the room's range
	leastGapMM = 2.0 // between field and frame, on each side
	spareGapMM = 1.0 // beyond what the field may outgrow its slack by, on each side
)

// FrameGapMM is the air that a frame should leave on each side of the field.
func (m Movement) FrameGapMM() float64 {
	return math.Max(leastGapMM, (printed(m.GrowthMM)-printed(m.SlackMM))/2+spareGapMM)
}

// OffPoints is how far the stock is from the middle of the room's range: positive
// where it is wetter.
func (m Movement) OffPoints() float64 { return m.StockPct - m.Room.Middle() }

// Settling is for how many days sticks lie in the room's climate before they are
// cut: at least, usually, and where they are far off. They have settled when two
// readings a week apart differ by less than half a point. Common practice, no
// source.
func (m Movement) Settling() Days {
	if math.Abs(printed(m.OffPoints())) > offPoints {
		return Days{Least: settleLeast, Plan: settleMost}
	}
	return Days{Least: settleLeast, Plan: settleUsual}
}

// Days are days of waiting: at least, and to plan with.
type Days struct{ Least, Plan int }

// Days that sticks settle.
const (
	settleLeast = 7
	settleUsual = 10
	settleMost  = 14
)

// Settled reports whether two meter readings, days apart, say that sticks have
// come to rest.
func Settled(first, second float64, daysApart int) bool {
	const leastDays, lessThan = 7, 0.5 // common practice, no source
	return daysApart >= leastDays && math.Abs(second-first) < lessThan
}

// printed rounds to a tenth, as sizes and moistures are shown, so that no check
// differs from what a person reads.
func printed(x float64) float64 { return math.Round(x*10) / 10 }
