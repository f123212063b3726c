// Package design is the document that a person makes: the room, its walls, the
// groups of panels on them and how the workshop builds them; and the price
// book, a document of its own.
//
// A design holds inputs only, never results. One table of fields (Fields)
// drives decoding, editing, validation, the JSON Schema and the forms of the
// page, so that a limit stands in one place. Lengths are exact texts with
// their units ("1 1/2 in"), percentages are numbers from 0 to 100, amounts of
// money are decimal texts in the currency of the price book.
//
// Axes, seen from the room and facing the panel as hung: x grows to the right
// from the left corner of the wall, y grows upwards from the floor; column 1 is
// at the left and row 1 at the top.
package design

import "blockfield/engine/length"

// The names and versions that open a file of ours.
const (
	Format      = "blockfield design"
	Version     = 1
	BookFormat  = "blockfield price book"
	BookVersion = 1
)

// Document is a design file: what is designed, how it is looked at, and what
// was offered, if anything.
type Document struct {
	Format  string   `json:"format"`
	Version int      `json:"version"`
	Design  Design   `json:"design"`
	Assumed []string `json:"assumed,omitempty"` // paths below design that nobody has typed or measured, sorted
	Looks   []Look   `json:"looks,omitempty"`
	View    View     `json:"view"`
	Offer   *Offer   `json:"offer,omitempty"`
}

// Look is a design that was kept for comparison.
type Look struct {
	Name   string `json:"name"`
	Design Design `json:"design"`
}

// View is how a reader looks at the design; it never changes a result.
type View struct {
	Units     length.Units `json:"units"`
	Language  string       `json:"language"`
	Reading   string       `json:"reading"`
	Lamp      Lamp         `json:"lamp"`
	Camera    Camera       `json:"camera"`
	WallPaint string       `json:"wallPaint"`
	Figure    bool         `json:"figure"` // a person and a sofa stand by, for scale
}

// Lamp is the movable light: azimuth clockwise from above, seen from the room;
// elevation above the plane of the wall; warmth in kelvin; spread as the radius in
// degrees under which the panel sees it, 0: that of a picture lamp.
type Lamp struct {
	Azimuth   float64 `json:"azimuth"`
	Elevation float64 `json:"elevation"`
	Warmth    float64 `json:"warmth"`
	Spread    float64 `json:"spread"`
}

// Camera is the place of the eye, in degrees round the panels and as a zoom
// factor; 0, 0, 1 is straight on with everything in sight. Distance is that from
// the middle of the panels; 0: far enough for a calm picture.
type Camera struct {
	Yaw      float64       `json:"yaw"`
	Pitch    float64       `json:"pitch"`
	Zoom     float64       `json:"zoom"`
	Distance length.Length `json:"distance"`
}

// Offer is the snapshot of what was offered for a revision of the design, or of what was
// agreed on in the end.
type Offer struct {
	Revision   string `json:"revision"`
	BookCode   string `json:"bookCode"`
	Net        Amount `json:"net"`
	Tax        Amount `json:"tax"`
	Gross      Amount `json:"gross"`
	Currency   string `json:"currency"`
	ValidUntil string `json:"validUntil"`
	Made       string `json:"made,omitempty"`      // day on which it was offered; empty: an earlier program did not say
	ReadyFrom  string `json:"readyFrom,omitempty"` // first day on which it may be ready; empty: not said
	ReadyBy    string `json:"readyBy,omitempty"`   // last day, if it is ordered on the day of the offer
	LaterFrom  string `json:"laterFrom,omitempty"` // the same two days if it is ordered on the last day of the offer;
	LaterBy    string `json:"laterBy,omitempty"`   // empty: then ReadyBy is that of whoever orders on the last day
	Wished     string `json:"wished,omitempty"`    // last day on which the client would like to have it
	Agreed     string `json:"agreed,omitempty"`    // day on which it was ordered, or the last change of it accepted; empty: it is offered only

	Workshop      string `json:"workshop,omitempty"` // whoever offers, by name
	Address       string `json:"address,omitempty"`  // and how to reach them, a line each
	TaxNumber     string `json:"taxNumber,omitempty"`
	ReverseCharge string `json:"reverseCharge,omitempty"` // said where the client owes the tax
	Terms         string `json:"terms,omitempty"`

	Taxes  []TaxPart      `json:"taxes,omitempty"`
	Stages []OfferedStage `json:"stages,omitempty"` // what is to be paid when; their sum is the gross price
	Look   string         `json:"look,omitempty"`   // what the offered look is called; empty: nothing
	Others []OfferedLook  `json:"others,omitempty"` // what was kept beside it
}

// For reports whether the offer was made for the design of a revision; no offer was for none.
func (o *Offer) For(revision string) bool { return o != nil && o.Revision == revision }

// AgreedFor reports whether the design of a revision was agreed on, as far as a file, a link
// or a letter says it to whoever has no record of the job.
func (o *Offer) AgreedFor(revision string) bool { return o.For(revision) && o.Agreed != "" }

// TaxPart is one rate of tax in a price: what it is taken on, without tax, and what it
// comes to.
type TaxPart struct {
	Percent float64 `json:"percent"`
	Base    Amount  `json:"base"`
	Tax     Amount  `json:"tax"`
}

// OfferedStage is a part of the gross price, and when it falls due.
type OfferedStage struct {
	Name   string `json:"name"`
	Amount Amount `json:"amount"`
}

// OfferedLook is another look in an offer: what it costs with tax, and how it differs.
type OfferedLook struct {
	Name       string        `json:"name"`
	Revision   string        `json:"revision"`
	Gross      Amount        `json:"gross"` // 0: it cannot be offered as it stands
	Wood       string        `json:"wood"`
	SecondWood string        `json:"secondWood,omitempty"`
	Width      length.Length `json:"width"`
	Height     length.Length `json:"height"`
	Kg         float64       `json:"kg"` // of all panels
}

// Design is everything that a result may depend on.
type Design struct {
	Title string `json:"title"`
	Note  string `json:"note"`
	Room  Room   `json:"room"`
	Walls []Wall `json:"walls"`
	Bench Bench  `json:"bench"`
	Work  Work   `json:"work"`
	WayIn WayIn  `json:"wayIn"`
	Money Money  `json:"money"`
}

// Room is the space that the panels are for. Temperatures are in °C and
// relative humidities in percent, as the extremes of a year.
type Room struct {
	Length          length.Length `json:"length"`
	Width           length.Length `json:"width"`
	Height          length.Length `json:"height"`
	Use             string        `json:"use"`
	Public          bool          `json:"public"`
	FireAnswer      string        `json:"fireAnswer,omitempty"` // retired: see Earlier
	Answers         string        `json:"answers,omitempty"`    // retired: see Earlier
	Goals           []string      `json:"goals"`
	TemperatureLow  float64       `json:"temperatureLow"`
	TemperatureHigh float64       `json:"temperatureHigh"`
	HumidityLow     float64       `json:"humidityLow"`
	HumidityHigh    float64       `json:"humidityHigh"`
	Seismic         bool          `json:"seismic,omitempty"` // the ground may shake, by the rules of the place
	Surfaces        []Surface     `json:"surfaces,omitempty"`
}

// Surface is a part of the room's floor, ceiling or walls that is covered with
// something. Share is in percent of that place.
type Surface struct {
	Place  string  `json:"place"`
	Lining string  `json:"lining"`
	Share  float64 `json:"share"`
}

// Wall is one wall with what is on it and in it.
type Wall struct {
	Name             string          `json:"name"`
	Kind             string          `json:"kind"`
	Note             string          `json:"note"`
	Width            length.Length   `json:"width"`
	Height           length.Length   `json:"height"`
	StudFirst        length.Length   `json:"studFirst"`          // middle of the first stud, from the left corner
	StudStep         length.Length   `json:"studStep"`           // middle to middle; 0: no studs
	Studs            []length.Length `json:"studs"`              // middles of the studs that were found; empty: by first and step
	Board            length.Length   `json:"board"`              // thickness of what lies over the studs; 0: not said
	Rail             bool            `json:"rail"`               // a rail across the studs carries every cleat
	Bow              length.Length   `json:"bow,omitzero"`       // out of flat under a straightedge of 2 m; 0: flat, or not measured
	BowShape         string          `json:"bowShape,omitempty"` // Belly, or else hollow
	ListenerDistance length.Length   `json:"listenerDistance"`
	EarHeight        length.Length   `json:"earHeight"`
	Walkway          bool            `json:"walkway"`           // people walk along the wall
	Outside          bool            `json:"outside,omitempty"` // an outside wall without insulation
	Sun              bool            `json:"sun,omitempty"`     // the sun stands on it for most of a day
	Fixing           Fixing          `json:"fixing"`
	Obstacles        []Obstacle      `json:"obstacles"`
	Groups           []Group         `json:"groups"`
}

// Fixing is what goes into the wall. The rated values are those that the
// fixing's maker gives for one fixing in this very base, in kN; 0: not given.
type Fixing struct {
	Kind       string        `json:"kind"`
	Diameter   length.Length `json:"diameter"` // of a wood screw; 0: not said
	RatedShear float64       `json:"ratedShear"`
	RatedPull  float64       `json:"ratedPull"`
	LoadFactor float64       `json:"loadFactor"`
	Reason     string        `json:"reason"` // why nobody can be below, for a factor under 4
	What       string        `json:"what"`
	Source     string        `json:"source"`
}

// Obstacle is a rectangle on the wall that matters for hanging.
type Obstacle struct {
	Kind   string        `json:"kind"`
	Note   string        `json:"note"`
	X      length.Length `json:"x"`
	Y      length.Length `json:"y"`
	Width  length.Length `json:"width"`
	Height length.Length `json:"height"`
}

// Group is one or more panels that are alike but for turn and counter-panel.
type Group struct {
	Name       string          `json:"name"`
	PanelsWide int             `json:"panelsWide"`
	PanelsHigh int             `json:"panelsHigh"`
	Order      string          `json:"order"`   // one letter a panel, A as designed, B the counter-panel, R turned by 180°; empty: all A
	Width      length.Length   `json:"width"`   // wished width of the field, over all panels of the group
	Height     length.Length   `json:"height"`  // wished height of the field, over all panels of the group
	Columns    int             `json:"columns"` // columns of one panel; 0: whole blocks nearest to the wish
	Rows       int             `json:"rows"`    // rows of one panel; 0: whole blocks nearest to the wish
	PanelGap   length.Length   `json:"panelGap"`
	Place      Place           `json:"place"`
	Block      Block           `json:"block"`
	Heights    []length.Length `json:"heights"`
	Pattern    Pattern         `json:"pattern"`
	Wood       string          `json:"wood"`
	Density    float64         `json:"density"` // kg/m³ of Wood as weighed; 0: the catalogue's
	// SecondWood is that of some of the blocks, which Mixed says; empty: all are of Wood.
	SecondWood  string  `json:"secondWood,omitempty"`
	Mixed       string  `json:"mixed,omitempty"`       // MixedEveryOther, MixedAtRandom, or else the taller heights
	SecondShare float64 `json:"secondShare,omitempty"` // percent of the blocks, at random; 0: half of them
	Backer      Backer  `json:"backer"`
	Frame       Frame   `json:"frame"`
	Finish      Finish  `json:"finish"`
	Cleat       Cleat   `json:"cleat"`
	Stand       Stand   `json:"stand"`
	Weighed     float64 `json:"weighed,omitempty"` // retired: see Earlier
}

// Place is where the outer edge of the group's panels is on the wall.
type Place struct {
	Left   length.Length `json:"left"`
	Edge   string        `json:"edge"` // "bottom" or "top": which edge Height gives
	Height length.Length `json:"height"`
}

// Block is the stick's section. Slack is the room that each block leaves to
// its neighbour; the pitch is Size plus Slack.
type Block struct {
	Size     length.Length `json:"size"`
	Slack    length.Length `json:"slack"`
	Section  string        `json:"section"`
	Measured bool          `json:"measured"` // ten sticks were measured
}

// Pattern says how the levels of the height set are laid over the field. What a
// kind does not use is kept but has no effect.
type Pattern struct {
	Kind         string   `json:"kind"`
	Order        int      `json:"order"`       // prime of the sequence kinds
	FoldRows     int      `json:"foldRows"`    // primitive root: rows of the folded sequence; 0: chosen
	FoldColumns  int      `json:"foldColumns"` // primitive root: columns of the folded sequence; 0: chosen
	Seed         int64    `json:"seed"`
	Clump        int      `json:"clump"` // blocks along each side of a patch of like height
	ShiftRows    int      `json:"shiftRows"`
	ShiftColumns int      `json:"shiftColumns"`
	Turn         int      `json:"turn"` // degrees clockwise: 0, 90, 180 or 270
	Mirror       bool     `json:"mirror"`
	Counter      bool     `json:"counter"`
	Drawn        []string `json:"drawn,omitempty"` // one string of level digits a row, row 1 first
}

// Backer is the plywood board that carries the blocks.
type Backer struct {
	Sheet     string        `json:"sheet"`
	Thickness length.Length `json:"thickness"`
}

// Frame goes round the field. Board is the width of the board that is bought,
// Gap the air between field and frame on each side, Reveal how far the frame
// is wanted to stand proud of the tallest block.
type Frame struct {
	Joint     string        `json:"joint"`
	Wood      string        `json:"wood"`
	Thickness length.Length `json:"thickness"`
	Board     length.Length `json:"board"`
	Gap       length.Length `json:"gap"`
	Reveal    length.Length `json:"reveal"`
}

// Finish is what seals the wood, and how often.
type Finish struct {
	Kind       string `json:"kind"`
	Coats      int    `json:"coats"`
	FrameCoats int    `json:"frameCoats"`
	// Colour and FrameColour are what is in the finish of field and frame.
	Colour      string `json:"colour"`
	FrameColour string `json:"frameColour"`
	When        string `json:"when"` // before or after gluing
}

// Cleat is the bevelled strip that the panel hangs on. Bevel is in degrees
// from the horizontal.
type Cleat struct {
	Thickness length.Length `json:"thickness"`
	Bevel     float64       `json:"bevel"`
	Lock      string        `json:"lock"`
}

// Stand carries the panels where the wall may not be touched; BaseDepth 0: no
// stand.
type Stand struct {
	BaseDepth    length.Length `json:"baseDepth"`
	ToeAhead     length.Length `json:"toeAhead"` // from the centre of mass forward to the toe
	CentreHeight length.Length `json:"centreHeight"`
}

// Bench is the stock and the shop. Percentages are numbers from 0 to 100.
type Bench struct {
	StickLength     length.Length `json:"stickLength"`
	BoardLength     length.Length `json:"boardLength"` // of frame boards, cleats and spacers; 0: by the running metre
	Stock           []Stock       `json:"stock"`
	Handling        string        `json:"handling"`            // between boards and visits at the stop block
	LongerFor       string        `json:"longerFor,omitempty"` // code of the blocks and sticks that a longer search was asked for
	Kerf            length.Length `json:"kerf"`
	EndTrim         length.Length `json:"endTrim"`
	HoldTail        length.Length `json:"holdTail"`
	BackerOversize  length.Length `json:"backerOversize"` // each way
	BackerGrain     string        `json:"backerGrain"`
	Sheets          []SheetStock  `json:"sheets,omitempty"`
	Trim            string        `json:"trim"`
	SawDepth        length.Length `json:"sawDepth"` // of the trimming saw
	Carrier         bool          `json:"carrier"`  // a clamped carrier holds short pieces at the saw
	Defects         float64       `json:"defects"`
	Spares          float64       `json:"spares"`
	SparesLeast     int           `json:"sparesLeast"` // of each height
	StockMoisture   float64       `json:"stockMoisture"`
	GlueOpenMinutes float64       `json:"glueOpenMinutes"`
	Temperature     float64       `json:"temperature"`
	Gang            int           `json:"gang"`      // sticks that are cut at once; 1: one by one
	WoodTimes       bool          `json:"woodTimes"` // times follow the hardness of the wood and the size of the blocks
	Fatigue         bool          `json:"fatigue"`   // hands tire at the same work
}

// Work is who does what. Distance is one way, in kilometres.
type Work struct {
	OwnBuild    bool    `json:"ownBuild"` // a home builder: no workshop, no selling price
	Crew        int     `json:"crew"`
	Lifting     Lifting `json:"lifting"`
	Survey      bool    `json:"survey"`
	Supply      string  `json:"supply,omitempty"` // what is made: SupplyKit, SupplyPlan, or else panels
	Delivered   bool    `json:"delivered"`
	Hung        bool    `json:"hung"`
	DistanceKm  float64 `json:"distanceKm"`
	ExtraShop   float64 `json:"extraShopMinutes"`
	ExtraSite   float64 `json:"extraSiteMinutes"`
	SpeedFactor float64 `json:"speedFactor"` // on shop minutes; 1: as the price book has them
}

// What a workshop makes. A design has no word for what is usual.
const (
	SupplyPanels = "panels"
	SupplyKit    = "kit"  // of cut and sanded blocks, which the client lays
	SupplyPlan   = "plan" // papers alone
)

// Scope is what a job is: how far the workshop goes.
type Scope string

// The scopes of supply, from the longest way to the shortest.
const (
	HungScope      Scope = "hung"
	DeliveredScope Scope = "delivered"
	CollectedScope Scope = "collected"
	KitScope       Scope = "kit"
	PlanScope      Scope = "plan"
)

// Scopes returns them in order.
func Scopes() []Scope {
	return []Scope{HungScope, DeliveredScope, CollectedScope, KitScope, PlanScope}
}

// Scope returns how far the workshop goes. A kit may be delivered or collected.
// At home nobody supplies anything, and a job is done to its end.
func (w Work) Scope() Scope {
	switch {
	case w.OwnBuild && !w.Hung:
		return CollectedScope
	case w.OwnBuild:
		return HungScope
	case w.Supply == SupplyPlan:
		return PlanScope
	case w.Supply == SupplyKit:
		return KitScope
	case w.Hung:
		return HungScope
	case w.Delivered:
		return DeliveredScope
	}
	return CollectedScope
}

// Lifting is how a panel gets up that is too heavy for hands, and who answers
// for it: the evidence that a heavy panel asks for.
type Lifting struct {
	Method string `json:"method"`
	Lead   string `json:"lead"` // name or role of whoever leads the lift
}

// ByHand is the lifting method that is none.
const ByHand = "hands"

// Named reports whether somebody answers for a method other than hands.
func (l Lifting) Named() bool { return l.Method != ByHand && !blank(l.Lead) }

// WayIn is the route from the street to the wall, each size at its narrowest. A
// size of 0 is one that nobody has measured, or that the route does not have.
type WayIn struct {
	DoorWidth  length.Length `json:"doorWidth"`
	DoorHeight length.Length `json:"doorHeight"`
	Corridor   length.Length `json:"corridor"`
	Stairs     string        `json:"stairs"`
	StairWidth length.Length `json:"stairWidth"` // between wall and handrail
	Landing    length.Length `json:"landing"`    // depth, in the direction of the flight
	Lift       string        `json:"lift"`
	LiftDoor   length.Length `json:"liftDoor"` // clear width
	LiftWidth  length.Length `json:"liftWidth"`
	LiftDepth  length.Length `json:"liftDepth"`
	LiftHeight length.Length `json:"liftHeight"` // of door or car, whichever is lower
	Vehicle    length.Length `json:"vehicle"`    // length of the loading floor
}

// Money is what the client and the law add. Percentages are numbers from 0 to
// 100.
type Money struct {
	Budget   Amount  `json:"budget"` // 0: not said
	Discount float64 `json:"discount"`
	Reason   string  `json:"discountReason,omitempty"`
	Tax      float64 `json:"tax"`
	Reverse  bool    `json:"reverseCharge,omitempty"` // the client owes the tax
	Extras   []Extra `json:"extras"`
}

// Extra is a free line that the tables do not know. Its amount is a cost, bought in or
// worked, out of which the price is made; or it is sold as it stands, beside the price
// of the panels and without their discount.
type Extra struct {
	Name   string  `json:"name"`
	Amount Amount  `json:"amount"`
	Role   string  `json:"role,omitempty"`   // ExtraWork, ExtraSold, or else bought in
	OwnTax bool    `json:"ownTax,omitempty"` // a line that is sold has a tax rate of its own
	Tax    float64 `json:"tax,omitempty"`    // that rate, in percent
}

// What the amount of a free line is. A design has no word for what is usual.
const (
	ExtraBought = "bought in"
	ExtraWork   = "work"
	ExtraSold   = "sold"
)
