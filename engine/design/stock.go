package design

import (
	"strconv"
	"strings"

	"blockfield/engine/length"
)

// maxStock is how many lines of wood beside the usual lengths a design has.
const maxStock = 24

// What decides between boards and handling at the stop block.
const (
	CheaperPlan  = "what costs less"
	FewestBoards = "fewest boards"
	FewestVisits = "fewest visits"
)

// Which way the face grain of a backer runs.
const (
	AnyGrain    = "either way"
	GrainAcross = "across"
	GrainUp     = "up"
)

// What is trimmed once the glue has set.
const (
	TrimBacker = "backer only"
	TrimBlocks = "through the blocks"
)

// When a field is finished.
const (
	FinishAfter  = "after gluing"
	FinishMasked = "before gluing, bases masked"
	FinishBefore = "before gluing"
)

// Stock is wood that can be had in another length than the usual one, or that is
// there already. What it is good for follows from its wood and its section.
type Stock struct {
	Wood      string        `json:"wood"`
	Width     length.Length `json:"width"`
	Thickness length.Length `json:"thickness"`
	Length    length.Length `json:"length"`
	Count     int           `json:"count"` // 0: as many as are wanted
	Owned     bool          `json:"owned"` // it is there and costs nothing
}

// SheetStock is sheets, or rests of sheets, that are there already and cost nothing. The
// grain runs along their length.
type SheetStock struct {
	Sheet     string        `json:"sheet"`
	Thickness length.Length `json:"thickness"`
	Width     length.Length `json:"width"`
	Length    length.Length `json:"length"`
	Count     int           `json:"count"`
}

// stockRows are the rows of how wood and sheets are bought and cut.
func stockRows(at string) []Field {
	const each = "stock[]."
	return []Field{
		lengthRow(at+"boardLength", 900, 6000, 100, "Length of the boards that frames, cleats and spacers are cut from.").zero("by-the-metre"),
		partsRow(at+"stock", 0, maxStock, "Wood in other lengths, and wood that is there already."),
		choiceRow(at+each+"wood", "Which wood.", Woods()...),
		lengthRow(at+each+"width", 10, 400, 1, "Width of its section."),
		lengthRow(at+each+"thickness", 6, 100, 1, "Thickness of its section; that of a stick is its width."),
		lengthRow(at+each+"length", 100, 6000, 10, "Its length."),
		integerRow(at+each+"count", 0, 999, "How many there are; 0 for as many as are wanted."),
		yesNoRow(at+each+"owned", "Whether it is there already and costs nothing."),
		choiceRow(at+"handling", "What decides between fewer boards and less handling of them.", CheaperPlan, FewestBoards, FewestVisits),
		textRow(at+"longerFor", codeLetters, "Code of the blocks and sticks for whose cutting plan somebody asked for a longer search; another one has no effect.").
			fixed().sparse(),
		lengthRow(at+"backerOversize", 0, 50, 1, "How much larger a backer is cut than its field, each way."),
		choiceRow(at+"backerGrain", "Which way the face grain of a backer runs.", AnyGrain, GrainAcross, GrainUp),
		partsRow(at+"sheets", 0, maxStock, "Sheets, and rests of sheets, that are there already.").sparse(),
		choiceRow(at+"sheets[].sheet", "Which board.", Sheets()...),
		lengthRow(at+"sheets[].thickness", 9, 25, 1, "Its thickness."),
		lengthRow(at+"sheets[].width", 100, 3000, 10, "Its size across the grain."),
		lengthRow(at+"sheets[].length", 100, 3000, 10, "Its size along the grain."),
		integerRow(at+"sheets[].count", 1, 99, "How many there are."),
		choiceRow(at+"trim", "What is trimmed once the glue has set.", TrimBacker, TrimBlocks),
		lengthRow(at+"sawDepth", 15, 200, 5, "How deep the trimming saw cuts."),
	}
}

// ownedStock must have a number: nobody owns as many as are wanted.
func (c *checker) ownedStock(stock []Stock, p *at) {
	for i := range min(len(stock), maxStock) {
		if s := stock[i]; s.Owned && s.Count == 0 && c.clean(p.item(i)) {
			c.add(p.item(i).field("count"), OutOfRange, "0", phrase("allowed/from", "low", 1))
		}
	}
}

// settleStock gives wood that is there already a number, and a stick, which is
// square, both sides.
func settleStock(before, after *Design, full string) {
	rest, ok := strings.CutPrefix(full, "design.bench.stock[")
	number, field, _ := strings.Cut(rest, "].")
	i, err := strconv.Atoi(number)
	if !ok || err != nil || i >= len(after.Bench.Stock) {
		return
	}
	was, s := before.Bench.Stock[i], &after.Bench.Stock[i]
	switch {
	case field == "owned" && s.Owned && s.Count == 0:
		s.Count = 1
	case field == "width" && was.Width.Same(was.Thickness):
		s.Thickness = s.Width
	}
}

// StickPrice is what one stick of a section and a length costs, where it is not
// sold by its volume.
type StickPrice struct {
	Wood   string        `json:"wood"`
	Size   length.Length `json:"size"`
	Length length.Length `json:"length"`
	Price  Amount        `json:"price"`
}

// stickRows are the rows of prices by the piece. A book may have none: then
// sticks are sold by volume.
func stickRows() []Field {
	return []Field{
		partsRow("sticks", 0, maxPrices, "Prices of sticks that are sold by the piece; all others go by volume.").sparse(),
		choiceRow("sticks[].wood", "Which wood.", Woods()...).required(),
		lengthRow("sticks[].size", 18, 100, 1, "Side of the stick's square section.").required(),
		lengthRow("sticks[].length", 900, 6000, 100, "Its length.").required(),
		amountRow("sticks[].price", 0, maxEach, "One such stick.").required(),
	}
}
