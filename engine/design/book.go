package design

import "blockfield/engine/length"

// Book is a price book: what the workshop pays and asks. A placeholder book
// holds invented figures and says so; Own lists those of them that are set already.
type Book struct {
	Format      string        `json:"format"`
	Version     int           `json:"version"`
	Name        string        `json:"name"`
	Placeholder bool          `json:"placeholder"`
	Currency    string        `json:"currency"`
	ValidFrom   string        `json:"validFrom"`
	ValidUntil  string        `json:"validUntil"`
	Rates       Rates         `json:"rates"`
	Policy      Policy        `json:"policy"`
	Travel      Travel        `json:"travel"`
	Goods       Goods         `json:"goods"`
	Woods       []WoodPrice   `json:"woods"`
	Sheets      []SheetPrice  `json:"sheets"`
	Finishes    []FinishPrice `json:"finishes"`
	Stages      []Stage       `json:"stages"`
	Tasks       []Task        `json:"tasks"`
	Sticks      []StickPrice  `json:"sticks,omitempty"`  // sold by the piece; empty: none
	Learned     []Learned     `json:"learned,omitempty"` // what jobs have taught of tasks; empty: nothing

	Taxes         []TaxRate `json:"taxes,omitempty"`         // beside the usual one of a design; empty: none
	ReverseCharge string    `json:"reverseCharge,omitempty"` // said where the client owes the tax
	Terms         string    `json:"terms,omitempty"`         // that stand on an offer

	// The letterhead of papers that go to a client.
	Workshop  string `json:"workshop,omitempty"`  // by name
	Address   string `json:"address,omitempty"`   // and how to reach it, a line each
	TaxNumber string `json:"taxNumber,omitempty"` // as the law of the place wants it on an invoice

	// Own are the paths of figures that the workshop has set where Placeholder says
	// that there are invented ones; else nil: all are its own.
	Own []string `json:"own,omitempty"`
}

// TaxRate is a rate of tax by its name.
type TaxRate struct {
	Name    string  `json:"name"`
	Percent float64 `json:"percent"`
}

// Learned is what the jobs of a workshop have taught of one task. Its rates in the time
// table hold it already.
type Learned struct {
	Task   string  `json:"task"`
	Factor float64 `json:"factor"` // on the rates that the book began with
	Jobs   int     `json:"jobs"`   // that it rests on
	Low    float64 `json:"low"`    // least minutes over reckoned minutes among them
	High   float64 `json:"high"`   // most

	// Rates that the book began with; 0 in a book of an earlier program.
	BeganLow     float64 `json:"beganLow,omitempty"`
	BeganTypical float64 `json:"beganTypical,omitempty"`
	BeganHigh    float64 `json:"beganHigh,omitempty"`
}

// TaskName is what the book calls a task; empty where it has none.
func (b Book) TaskName(id string) string {
	for _, t := range b.Tasks {
		if t.ID == id {
			return t.Name
		}
	}
	return ""
}

// Early reports whether a day, "2026-03-31", is before the book's first one. An
// empty day is none.
func (b Book) Early(day string) bool { return day != "" && day < b.ValidFrom }

// Lapsed reports whether a day is after the book's last one.
func (b Book) Lapsed(day string) bool { return lapsed(b.ValidUntil, day) }

func lapsed(lastDay, day string) bool { return lastDay != "" && day > lastDay }

// Rates are amounts for an hour of work.
type Rates struct {
	Shop     Amount `json:"shop"`
	Office   Amount `json:"office"`
	Site     Amount `json:"site"`
	Overhead Amount `json:"overhead"` // on each shop hour
}

// Policy is how cost becomes a price. Percentages are numbers from 0 to 100.
type Policy struct {
	MaterialMarkup float64 `json:"materialMarkup"`
	Contingency    float64 `json:"contingency"`
	Margin         float64 `json:"margin"`
	MarginFloor    float64 `json:"marginFloor"`
	MinimumCharge  Amount  `json:"minimumCharge"`
	RoundTo        Amount  `json:"roundTo"`
	ValidDays      int     `json:"validDays"`
	DiscountLimit  float64 `json:"discountLimit,omitempty"` // largest discount without the owner; 0: none is set
	ChangeFee      Amount  `json:"changeFee,omitempty"`     // of a change after the lock, beside the difference
	Sample         Amount  `json:"sample,omitempty"`        // of wood and finish; 0: it is not sold
}

// Travel is the price of the road.
type Travel struct {
	PerKm    Amount  `json:"perKm"`
	SpeedKmh float64 `json:"speedKmh"`
}

// Goods are prices of what every job needs.
type Goods struct {
	GluePerKg       Amount  `json:"gluePerKg"`
	GlueBottleKg    float64 `json:"glueBottleKg"`
	CleatPerM3      Amount  `json:"cleatPerM3"`
	WoodScrew       Amount  `json:"woodScrew"`
	WallFixing      Amount  `json:"wallFixing"`
	Brad            Amount  `json:"brad"`
	AbrasivesPer100 Amount  `json:"abrasivesPer100"` // cut blocks
	BladesPer1000   Amount  `json:"bladesPer1000"`   // cut blocks
	PackingPerPanel Amount  `json:"packingPerPanel"`
}

// WoodPrice is what a shop wood costs as planed squares and as frame boards.
type WoodPrice struct {
	Wood         string `json:"wood"`
	SquaresPerM3 Amount `json:"squaresPerM3"`
	BoardsPerM3  Amount `json:"boardsPerM3"`
}

// SheetPrice is the price of one whole sheet.
type SheetPrice struct {
	Sheet     string        `json:"sheet"`
	Thickness length.Length `json:"thickness"`
	Price     Amount        `json:"price"`
}

// FinishPrice is the price of a litre.
type FinishPrice struct {
	Finish   string `json:"finish"`
	PerLitre Amount `json:"perLitre"`
}

// Stage is a part of the gross price that falls due at a point of the job.
type Stage struct {
	Name    string  `json:"name"`
	Percent float64 `json:"percent"`
}

// Task is one row of the time table: minutes = quantity × rate, for a practised
// maker, a usual job and a first one.
type Task struct {
	ID      string  `json:"id"`
	Name    string  `json:"name"`
	Role    string  `json:"role"` // "shop", "office" or "site"
	Per     string  `json:"per"`
	Unit    string  `json:"unit"` // "min" or "s"
	Low     float64 `json:"low"`
	Typical float64 `json:"typical"`
	High    float64 `json:"high"`
}
