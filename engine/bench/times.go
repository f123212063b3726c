package bench

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"blockfield/engine/design"
	"blockfield/engine/words"
)

// Working days and weekends.
const (
	minutesAnHour  = 60
	secondsAMinute = 60
	ShopDayHours   = 6   // productive hours of one person; invented
	HomeDayHours   = 6   // of a home builder on a free day; invented
	WeekendDays    = 2   // in a weekend
	HomeFactor     = 1.6 // hand tools and a first panel; invented
	halfOfPictures = 0.5 // a home builder plays with the pattern, but prepares no options for a client
	cutsARecheck   = 50
)

// CrewShare is how much each person gets done when n work together: they wait
// for the saw and for one another. Invented; beyond four people it stays.
func CrewShare(n int) float64 {
	shares := []float64{1.00, 0.92, 0.80, 0.70}
	return shares[min(max(n, 1), len(shares))-1]
}

// The tasks that a count or a rule knows by name.
const (
	taskEnquiry   = "a1"
	taskSurvey    = "a2"
	taskPictures  = "a3"
	taskOffer     = "a4"
	taskInvoices  = "a6"
	taskLongFaces = "b2"
	taskCutBlock  = "c3"
	taskShowEnds  = "d2"
	taskGlueBlock = "e4"
	taskWrap      = "i2"
	taskWallCleat = "j4a"
)

// What tasks are counted by, where a rule knows it by name. Tidying needs the other
// shop tasks first.
const (
	perShopDay    = "shop day (6 h)"
	perStick      = "stick bought"
	perCutBlock   = "cut block"
	perGluedBlock = "glued block"
)

// counts are the quantities of a job by what the time table counts by.
type counts map[string]float64

// Measures are what a task of a time table may be counted by, in order.
func Measures() []string {
	known := (&Bill{}).count(design.Work{}, nil)
	return slices.Sorted(maps.Keys(map[string]float64(known)))
}

// Counted returns nil where each task of a time table is counted by something
// that jobs have, and else an error of type design.Faults, which names the rows.
func Counted(tasks []design.Task) error {
	known := Measures()
	var faults design.Faults
	for i, t := range tasks {
		if !slices.Contains(known, t.Per) {
			faults = append(faults, design.Fault{
				Path: fmt.Sprintf("tasks[%d].per", i), Code: design.UnknownChoice, Value: words.Printable(t.Per),
				Allowed: words.Phrase{Key: "allowed/one-of", Args: words.Args{"choices": known}},
			})
		}
	}
	if faults == nil {
		return nil
	}
	return faults
}

// count fills in the quantities of everything; of shop days it knows only that
// they exist.
func (b *Bill) count(w design.Work, jobs []job) counts {
	var sticks, heights, rows, framed, frameM, frameCoatM float64
	var fieldM2, coatM2, betweenM2 float64
	coatSetups := map[string]int{} // the brushes are cleaned once a coat and finish
	for _, lot := range b.Lots {
		sticks += float64(lot.Sticks)
		heights += float64(len(lot.Heights))
	}
	for _, j := range jobs {
		n := float64(j.panels())
		coats, frameCoats := j.coats()
		rows += n * float64(j.built.Rows)
		fieldM2 += n * j.fieldM2()
		coatM2 += n * j.fieldM2() * float64(coats)
		betweenM2 += n * j.fieldM2() * float64(max(0, coats-1))
		coatSetups[j.design.Finish.Kind] = max(coatSetups[j.design.Finish.Kind], coats)
		if j.built.Framed {
			framed = 1
			frameM += n * j.built.FrameRunning.Metres()
			frameCoatM += n * j.built.FrameRunning.Metres() * float64(frameCoats)
		}
	}
	setups := 0
	for _, coats := range coatSetups {
		setups += coats
	}
	panels, crew, cuts := float64(b.Panels), float64(w.Crew), float64(b.CutBlocks)
	return counts{
		"job":              1,
		"survey":           yes(w.Survey),
		perStick:           sticks,
		"height above 0":   heights,
		perCutBlock:        cuts,
		"50 cuts":          cuts / cutsARecheck,
		perVisit:           float64(b.Visits),
		"panel":            panels,
		perGluedBlock:      float64(b.Blocks),
		"row":              rows,
		"m² field":         fieldM2,
		"coat":             float64(setups),
		"m² × coat":        coatM2,
		"m² × (coats − 1)": betweenM2,
		"job with frame":   framed,
		"frame":            float64(b.Frames),
		"m frame":          frameM,
		"m frame × coat":   frameCoatM,
		"person":           crew,
		"panel × person":   panels * crew,
		"wall fixing":      float64(b.WallFixings),
		perShopDay:         0, // see tidy
	}
}

func yes(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// times fills in tasks and hours.
func (b *Bill) times(w design.Work, pace Pace, jobs []job) error {
	quantities := b.count(w, jobs)
	hanging := 0 // panels that go on a wall cleat
	for i, j := range jobs {
		if b.Groups[i].Rule != NoFixings {
			hanging += j.panels()
		}
	}
	var shop Spread // minutes so far, which decide the days to tidy
	shop.add(spreadOf(w.ExtraShop))
	for i, t := range pace.Tasks {
		n, known := quantities[t.Per]
		if !known {
			return fmt.Errorf("tasks[%d].per: nothing is counted by %q", i, t.Per)
		}
		if t.ID == taskWallCleat {
			n = float64(hanging)
		}
		n *= share(t, w)
		minutes := rates(t, w).times(spreadOf(n * pace.Factors.of(t.ID, b.Lots)))
		minutes = pace.Factors.tired(t.Per, minutes)
		if t.Per != perShopDay && t.Role == roleShop {
			shop.add(minutes)
		}
		b.Tasks = append(b.Tasks, TaskTime{
			ID: t.ID, Name: t.Name, Role: t.Role, Per: t.Per, Quantity: n, Minutes: minutes,
		})
	}
	b.tidy(w, pace.Tasks, shop.started())
	b.Tasks = slices.DeleteFunc(b.Tasks, func(t TaskTime) bool { return t.Quantity == 0 })
	b.sum(w, pace, jobs)
	return nil
}

// The roles of the time table.
const (
	roleShop   = "shop"
	roleOffice = "office"
	roleSite   = "site"
)

// share is the part of a task that this job has: those that its scope takes, and
// no selling, invoicing or wrapping for a home builder.
func share(t design.Task, w design.Work) float64 {
	if !inScope(t, w.Scope()) {
		return 0
	}
	if !w.OwnBuild {
		return 1
	}
	switch t.ID {
	case taskEnquiry, taskSurvey, taskOffer, taskInvoices, taskWrap:
		return 0
	case taskPictures:
		return halfOfPictures
	}
	return 1
}

// rates are the minutes for one of what the task is counted by. Experience
// and batches show in shop tasks only.
func rates(t design.Task, w design.Work) Spread {
	s := Spread{t.Low, t.Typical, t.High}
	if t.Unit == "s" {
		s = s.times(spreadOf(1.0 / secondsAMinute))
	}
	if t.Role == roleShop {
		s = s.times(spreadOf(w.SpeedFactor))
	}
	return s
}

// tidy gives the tasks that are counted by shop days their days; slower work
// takes more of them.
func (b *Bill) tidy(w design.Work, tasks []design.Task, days Spread) {
	for i := range b.Tasks {
		if b.Tasks[i].Per != perShopDay {
			continue
		}
		part := spreadOf(share(tasks[i], w))
		b.Tasks[i].Quantity = days.Typical * part.Typical
		b.Tasks[i].Minutes = rates(tasks[i], w).times(days).times(part)
	}
}

// sum adds tasks up to hours and days.
func (b *Bill) sum(w design.Work, pace Pace, jobs []job) {
	var shop, office, site Spread
	for _, t := range b.Tasks {
		switch t.Role {
		case roleShop:
			shop.add(t.Minutes)
		case roleOffice:
			office.add(t.Minutes)
		case roleSite:
			site.add(t.Minutes)
		}
		if t.ID == taskLongFaces || t.ID == taskShowEnds {
			b.SandingHours.add(t.Minutes.hours())
		}
	}
	shop.add(spreadOf(w.ExtraShop))
	site.add(spreadOf(w.ExtraSite))
	h := Hours{Shop: shop.hours(), Office: office.hours(), Site: site.hours()}
	b.road(w, pace, &h)
	for _, s := range []Spread{h.Shop, h.Office, h.Site, h.Travel} {
		h.Total.add(s)
	}
	b.Hours = h
	n := max(w.Crew, 1)
	b.ShopDays = h.Shop.times(spreadOf(1 / (float64(n) * CrewShare(n) * ShopDayHours)))
	b.AtHome(HomeFactor)
	b.BlockSeconds = secondsABlock(pace.Tasks, w)
	b.GlueRowSeconds = fullestRow(jobs) * b.BlockSeconds
}

// AtHome sets how much longer a home builder takes, with the tools that are there.
func (b *Bill) AtHome(factor float64) {
	b.HomeFactor = factor
	b.HomeHours = b.Hours.Total.times(spreadOf(factor))
	b.Weekends = b.HomeHours.times(spreadOf(1.0 / (HomeDayHours * WeekendDays)))
}

// road adds the way to the survey, by one person, and to the delivery, by one
// or by the crew that hangs.
func (b *Bill) road(w design.Work, pace Pace, h *Hours) {
	if w.OwnBuild || pace.SpeedKmh <= 0 {
		return
	}
	people, trips := 0, 0
	if w.Survey {
		people, trips = people+1, trips+1
	}
	switch {
	case w.Hung:
		people, trips = people+w.Crew, trips+1
	case w.Delivered:
		people, trips = people+1, trips+1
	}
	const thereAndBack = 2
	b.RoadKm = thereAndBack * w.DistanceKm * float64(trips)
	h.Travel = spreadOf(thereAndBack * w.DistanceKm / pace.SpeedKmh * float64(people))
}

// fullestRow is the largest number of blocks that one row glues.
func fullestRow(jobs []job) float64 {
	most := 0
	for _, j := range jobs {
		for _, p := range j.built.Panels {
			for row := range p.Grid.Rows {
				n := 0
				for _, level := range p.Grid.Levels[row*p.Grid.Columns : (row+1)*p.Grid.Columns] {
					if !j.zero(int(level)) {
						n++
					}
				}
				most = max(most, n)
			}
		}
	}
	return float64(most)
}

// secondsABlock is how long gluing one block usually takes these hands: slow
// ones let the glue skin sooner.
func secondsABlock(tasks []design.Task, w design.Work) float64 {
	for _, t := range tasks {
		if t.ID == taskGlueBlock {
			return rates(t, w).Typical * secondsAMinute
		}
	}
	return 0
}

func spreadOf(x float64) Spread { return Spread{x, x, x} }

func (s *Spread) add(t Spread) {
	s.Low, s.Typical, s.High = s.Low+t.Low, s.Typical+t.Typical, s.High+t.High
}

func (s Spread) times(t Spread) Spread {
	return Spread{s.Low * t.Low, s.Typical * t.Typical, s.High * t.High}
}

func (s Spread) hours() Spread { return s.times(spreadOf(1.0 / minutesAnHour)) }

// started turns minutes into days begun, to the second.
func (s Spread) started() Spread {
	days := func(minutes float64) float64 {
		const secondsADay = ShopDayHours * minutesAnHour * secondsAMinute
		return math.Ceil(math.Round(minutes*secondsAMinute) / secondsADay)
	}
	return Spread{days(s.Low), days(s.Typical), days(s.High)}
}
