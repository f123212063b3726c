package cost

import (
	"blockfield/engine/length"
	"blockfield/engine/money"
)

// Quantities is what is bought and worked for a job, in the whole steps that
// enter money: 1 mm³ of wood, 1 ml of finish, 1 g of glue, 1 s of work and 1 m
// of road. Steps makes them out of a measured figure.
type Quantities struct {
	OwnBuild    bool // a home builder: goods only, nothing is sold
	Squares     []Timber
	Boards      []Timber // for frames
	Sheets      []Sheet
	Finishes    []Finish
	CleatMM3    int64
	GlueG       int64 // in the joints
	CleatScrews int
	WallFixings int
	Brads       int
	CutBlocks   int
	Panels      int
	Shop        int64 // usual seconds of work
	Office      int64
	Site        int64
	Travel      int64
	RoadM       int64  // of all trips, there and back
	Tasks       []Task // what the work consists of, as far as its time is uncertain
	Surveyed    bool   // somebody has seen the site
}

// Timber is a volume of one wood as it is bought. Sticks, which a book may price by
// the piece, say their section, length and number as well.
type Timber struct {
	Wood      string
	VolumeMM3 int64
	Size      length.Length
	Length    length.Length
	Count     int64 // 0: not sticks
}

// Sheet is whole sheets of one board.
type Sheet struct {
	Sheet     string
	Thickness length.Length
	Count     int
}

// Finish is an amount of one finish.
type Finish struct {
	Finish   string
	VolumeML int64
}

// Worker is whose hour it is.
type Worker string

// The workers, in the words of the time table.
const (
	Shop   Worker = "shop"
	Office Worker = "office"
	Site   Worker = "site"
)

// Task is the seconds of one task: at best, usually, and at worst.
type Task struct {
	By                 Worker
	Low, Typical, High int64
}

// Role says which part of the price a line belongs to.
type Role string

// The roles of lines.
const (
	Material Role = "material"
	Labour   Role = "labour"
	Overhead Role = "overhead"
	Travel   Role = "travel"
	Sold     Role = "sold" // as it stands, beside the price that is made of the others
)

// Line is one line of the direct cost.
type Line struct {
	Key    string // of its words: "line/block-stock"
	Name   string // of a free line, in the words of whoever typed it; else empty
	Role   Role
	Amount money.Money
}

// StageAmount is what falls due at a point of the job, out of the gross price.
type StageAmount struct {
	Name   string // in the words of the book
	Amount money.Money
}

// TaxAmount is what one rate of tax comes to.
type TaxAmount struct {
	Percent float64
	Base    money.Money // net, that it is taken on
	Amount  money.Money
}

// Price is a job in money. For a home builder only Lines, BoughtIn and
// Materials are set: nothing is sold.
type Price struct {
	Currency    string
	Placeholder bool // figures out of a book that is invented
	Sold        bool // false for a home builder
	Lines       []Line

	BoughtIn    money.Money // sum of the material lines
	Markup      money.Money
	Labour      money.Money
	Overhead    money.Money
	Travel      money.Money
	Direct      money.Money // the five above
	Contingency money.Money
	Cost        money.Money // direct and contingency

	Beside money.Money // net, of the lines that are sold as they stand

	List           money.Money // cost with the wanted margin, not below the minimum charge
	MinimumApplied bool        // the minimum charge lifted the list price
	Discount       money.Money // taken off the list price
	RoundedUp      money.Money // added to reach the step of the policy
	Made           money.Money // list − discount + rounded up
	Net            money.Money // made + beside
	Margin         money.Money // made − cost; below zero where the job loses money
	MarginPercent  float64     // of made, after discount
	Taxes          []TaxAmount // by rate, the usual one first; their sum is Tax
	Tax            money.Money
	Gross          money.Money

	Low, High money.Money   // gross between which 80 % of the cases end, see range.go
	Materials money.Money   // what a home builder buys
	Stages    []StageAmount // sum to gross
}
