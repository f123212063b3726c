package bench

import (
	"slices"

	"blockfield/engine/cut"
	"blockfield/engine/design"
	"blockfield/engine/length"
)

// Spread is one figure for a practised maker with a good bench, for a usual
// job, and for a first one with awkward stock.
type Spread struct{ Low, Typical, High float64 }

// Bill is what a job takes: goods, pieces and hours over all its groups.
type Bill struct {
	Panels    int
	Frames    int
	Cells     int
	Blocks    int // glued
	CutBlocks int // with spares
	Visits    int // boards that are set aside and fetched again at the stop block
	Lots      []Lot
	CutsCode  string // of blocks and sticks, whatever they cost: what a longer search is asked for
	Longer    bool   // it was made
	Sheets    []SheetNeed
	Frame     []FrameStock
	Finishes  []FinishNeed
	Coats     []Coat // of each finish, in the order of the work
	Surfaces  Surfaces
	Cleat     CleatStock
	GlueKg    float64 // in the joints; what sticks in the tin comes with the bottles

	CleatScrews int
	WallFixings int
	Brads       int

	Groups     []GroupBill // one for each group of the design, in its order
	HeaviestKg float64     // of one panel, with glue and finish
	TotalKg    float64     // of all panels, with glue and finish

	Tasks          []TaskTime // of this job only, in the order of the table
	Hours          Hours
	RoadKm         float64 // of all trips, there and back
	SandingHours   Spread  // of a powered sander in the hand: long faces and show ends
	GlueRowSeconds float64
	BlockSeconds   float64 // of that, for one block; 0 where the time table has no such task
	ShopDays       Spread  // elapsed, for the crew of the job
	HomeHours      Spread  // of a home builder, whom all takes longer
	HomeFactor     float64 // by how much
	Weekends       Spread  // that those hours fill
}

// Lot is what is cut out of one kind of stick.
type Lot struct {
	Wood                string
	Size                length.Length // side of the square section
	StickLength         length.Length // the usual one
	Heights             []HeightCount // rising, without bare backer
	Bars                []Bar         // the usual length first, then other lengths and what is there
	Sticks              int           // to buy
	OwnSticks           int           // that are there and are cut
	SticksBeforeDefects int           // that are cut, all of them sound
	Cuts                cut.Plan      // of the sound sticks, with the fewest visits that were found; lengths in nanometres
	Priced              bool          // costs are money, in ten-thousandths; else lengths
	Proven              bool          // no plan of sound sticks costs less than the first of the curve
	GapPercent          float64       // how far, at most, the first of the curve is from the cheapest plan
	Curve               []Handling    // boards against visits, the fewest boards first
	Chosen              int           // on the curve: the plan of Cuts
	BoughtM3            float64       // of the sticks to buy
	BlocksM3            float64       // of the blocks that end up in panels
	UsedPercent         float64       // share of the length of all these sticks that ends up in panels
	FewestM3            float64       // of the sticks to buy for the fewest boards, whatever wood and time cost
	FewestUsedPercent   float64       // the share of theirs

	offers []offer
}

// HeightCount says how many blocks of one height are glued and cut.
type HeightCount struct {
	Height length.Length
	Need   int
	Spare  int
	Cut    int // need and spare
}

// SheetNeed is whole sheets of one board.
type SheetNeed struct {
	Sheet     string
	Thickness length.Length
	Count     int
	PerSheet  int                 // the fewest backers of one group that come out of a sheet; 0 where one is larger than a sheet
	TooLarge  bool                // some backer has to be joined out of several sheets
	Backers   []Backer            // that come out of one sheet, by their sizes; the parts of Plan
	There     []design.SheetStock // sheets of this board that are there already, as Plan counts them
	Rests     []SheetRest         // what is left over and worth keeping, the largest first
	Plan      cut.SheetPlan       // of Backers; x across and y along the sheet
}

// SheetRest is a number of rests of sheets, all of one size.
type SheetRest struct {
	Width, Length length.Length // across and along the grain
	Count         int
}

// FrameStock is the frame board of one wood, thickness and width.
type FrameStock struct {
	Wood      string
	Thickness length.Length
	Board     length.Length // width that is bought
	NeedM     float64       // running, in the frames
	BoughtM   float64       // running: of whole boards, or with what the cuts and faults take
	BoughtM3  float64
	Cuts      *BoardCuts // nil: bought by the running metre
}

// BoardCuts is how the pieces of frames, or of cleats and spacers, come out of
// boards.
type BoardCuts struct {
	Bars    []Bar
	Plan    cut.Plan // lengths in nanometres, with what a test fit needs
	TooLong length.Length
}

// FinishNeed is one finish for fields and frames.
type FinishNeed struct {
	Finish      string
	FieldLitres float64
	FrameLitres float64
	Litres      float64
}

// Surfaces are what the room's air reaches of all panels, in m².
type Surfaces struct {
	EndM2   float64 // tops of the blocks
	LongM2  float64 // their sides where they stand above their neighbours, and bare backer
	FrameM2 float64 // both faces of the frames
}

// CleatStock is the strips for cleats and spacers.
type CleatStock struct {
	RunningM float64 // cleat, wall cleat and spacer of all panels
	BoughtM3 float64
	Strips   []Strip // of each thickness
}

// Strip is the strips of one thickness.
type Strip struct {
	Thickness length.Length
	NeedM     float64
	BoughtM   float64
	Cuts      *BoardCuts // nil: bought by the running metre
}

// FixingRule names how fixings were counted; "count/" and the rule is the key of
// its sentence.
type FixingRule string

// The ways to count wall fixings.
const (
	RatedValue     FixingRule = "rated-value"     // typed, with the load factor, shear and pull added
	PublishedRules FixingRule = "published-rules" // wood screws in timber studs
	NotChecked     FixingRule = "not-checked"     // nobody knows what holds: the least count, for the price only
	NoFixings      FixingRule = "none"            // a floor stand, or nothing may go into the wall
)

// Screw is a wood screw by its gauge.
type Screw struct {
	Gauge int
	Long  length.Length
}

// GroupBill is what one group of panels comes to, for its list and its wall.
type GroupBill struct {
	GlueKg     float64
	Litres     float64
	AddedKg    float64 // glue and finish that stay on one panel
	HeaviestKg float64 // of one panel, with glue and finish
	TotalKg    float64
	Held
	PerSheet int // backers out of a sheet, all turned the same way; 0 where one is larger than a sheet
	Split    Split
	Trims    []Trim // of its four edges
}

// TaskTime is one row of the time table as far as this job needs it.
type TaskTime struct {
	ID       string
	Name     string // the book's own words
	Role     string
	Per      string
	Quantity float64
	Minutes  Spread
}

// IDs of the times that are no task of a price book.
const (
	FurtherShop = "further-shop" // what a design asks for beside the tasks
	FurtherSite = "further-site"
	Road        = "road"
)

// TimeKey is the key of the words for one of those times; empty for a task.
func TimeKey(id string) string {
	switch id {
	case FurtherShop:
		return "label/work.extraShopMinutes"
	case FurtherSite:
		return "label/work.extraSiteMinutes"
	case Road:
		return "hours/travel"
	}
	return ""
}

// Timed are the tasks and, after them, the times that are none: together they are
// Hours.Total, for whoever lists them.
func (b Bill) Timed(w design.Work) []TaskTime {
	all := slices.Clone(b.Tasks)
	add := func(id, role string, minutes Spread) {
		if minutes.High > 0 {
			all = append(all, TaskTime{ID: id, Role: role, Minutes: minutes})
		}
	}
	add(FurtherShop, roleShop, spreadOf(w.ExtraShop))
	add(FurtherSite, roleSite, spreadOf(w.ExtraSite))
	add(Road, "", b.Hours.Travel.times(spreadOf(minutesAnHour)))
	return all
}

// Hours are person-hours. Total is the sum of the others.
type Hours struct{ Shop, Office, Site, Travel, Total Spread }
