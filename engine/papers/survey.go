package papers

import (
	"fmt"
	"slices"
	"strings"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/draw"
	"blockfield/engine/papers/sheet"
	"blockfield/engine/wall"
)

// What a survey asks, by the paths of its fields below the design.
func roomFields() []string {
	return []string{
		"room.use", "room.length", "room.width", "room.height", "room.public",
		"room.temperatureLow", "room.temperatureHigh", "room.humidityLow", "room.humidityHigh", "room.seismic",
	}
}

// wayFields are those of the steps that the way in has.
func wayFields(steps []wall.Step) []string {
	fields := map[string][]string{
		"way/door":    {"doorWidth", "doorHeight", "corridor"},
		"way/stairs":  {"stairs", "stairWidth", "landing"},
		"way/lift":    {"lift", "liftDoor", "liftWidth", "liftDepth", "liftHeight"},
		"way/vehicle": {"vehicle"},
	}
	var all []string
	for _, s := range steps {
		for _, name := range fields[s.Name] {
			all = append(all, "wayIn."+name)
		}
	}
	return all
}

// wallFields are those that a wall has use for.
func wallFields(w int, side design.Wall) []string {
	all := []string{"kind", "width", "height"}
	if wall.HasStuds(side) {
		all = append(all, "board", "studFirst", "studStep", "studs")
	}
	if wall.Takes(side) {
		all = append(all, "bow")
	}
	if !side.Bow.IsZero() {
		all = append(all, "bowShape")
	}
	all = append(all, "walkway", "outside", "sun", "listenerDistance", "earHeight", "note")
	for i := range all {
		all[i] = fmt.Sprintf("walls[%d].%s", w, all[i])
	}
	return all
}

// askedFields are what is asked about the building, below the record of the job.
func askedFields() []string {
	return []string{"asked.fire", "asked.walkway", "asked.devices", "asked.reach", "asked.protected", "asked.drill",
		"asked.professional", "asked.licence", "asked.lookedOn", "asked.lookedAt", "asked.other"}
}

// thingRows are lines for what is on the wall.
const thingRows = 5

// surveySize is the type of a filled sheet, which is read at a desk.
func (m *maker) surveySize() float64 { return m.either(3.6, 3.2) }

// surveyBlank is one page to be filled in at the wall.
func (m *maker) surveyBlank() sheet.Paper {
	short := func(key string) sheet.Cell { return sheet.Cell{Text: m.T("survey/" + key)} }
	lines := func(head string, keys ...string) sheet.Table {
		t := sheet.Table{Grid: true, Least: 6.6, Size: sheet.SmallSize, Columns: []sheet.Column{{Head: m.T("survey/" + head), Width: 54}, {Grow: true}}}
		for _, key := range keys {
			t.Rows = append(t.Rows, []sheet.Cell{short(key), {}})
		}
		return t
	}
	squares := int(m.either(26, 18)) // upwards
	things := sheet.Table{Grid: true, Least: 6.6, Size: sheet.SmallSize, Columns: []sheet.Column{
		{Head: m.T("survey/thing"), Grow: true}, {Head: m.T("survey/x"), Grow: true}, {Head: m.T("survey/y"), Grow: true}, {Head: m.T("survey/wide"), Grow: true}, {Head: m.T("survey/high"), Grow: true},
	}}
	for range int(m.either(thingRows, thingRows-1)) {
		things.Rows = append(things.Rows, make([]sheet.Cell, 5))
	}
	return m.paper("survey-blank", sheet.Front,
		m.surveyedBy(),
		sheet.Beside{Shares: []float64{1, 1}, Columns: [][]sheet.Block{
			{lines("room-and-wall", "use", "room-size", "climate", "wall-kind", "wall-size", "board", "studs", "bow", "ceiling", "ears", "professional")},
			{lines("way-and-house", "door", "corridor", "stairs", "lift", "vehicle", "fire", "protected", "drill", "devices", "photos")},
		}},
		things,
		sheet.Fitted(func(width float64) []sheet.Block { return []sheet.Block{m.sketchGrid(width, squares)} }),
		sheet.Small(m.T("survey/blank-caution")),
	)
}

func (m *maker) surveyedBy() sheet.Blanks {
	return sheet.Blanks{{Label: m.T("survey/where"), Share: 3}, {Label: m.T("survey/by"), Share: 2}, {Label: m.T("blank/date"), Share: 1}}
}

// sketchGrid is squared paper for the wall: a square is 100 mm, or 4 in.
func (m *maker) sketchGrid(width float64, rows int) sheet.Block {
	const square, every = 2.5, 5
	columns := int(width / square)
	high := float64(rows) * square
	return sheet.Piece{Height: high + 5, Draw: func(p sheet.Pen) {
		wide := float64(columns) * square
		var fine, strong [][4]float64
		add := func(i int, line [4]float64) {
			if i%every == 0 {
				strong = append(strong, line)
			} else {
				fine = append(fine, line)
			}
		}
		for i := range columns + 1 {
			x := float64(i) * square
			add(i, [4]float64{x, 0, x, high})
		}
		for i := range rows + 1 {
			y := float64(rows-i) * square
			add(i, [4]float64{0, y, wide, y})
		}
		p.Grid(draw.Fine, fine...)
		p.Grid(draw.Visible, strong...)
		p.Line(0, high, wide, high, draw.Heavy)
		p.Text(0, high+4, sheet.Type{Size: sheet.SmallSize}, sheet.Fit(sheet.Regular, sheet.SmallSize, width, m.T("survey/square-"+m.Words.Units.Word())))
	}}
}

// surveyFilled is what is known of room, walls and way in, with what nobody has measured
// yet marked.
func (m *maker) surveyFilled() sheet.Paper {
	blocks := []sheet.Block{m.surveyedBy(), sheet.Beside{Shares: []float64{1, 1}, Columns: [][]sheet.Block{
		{sheet.Heading(m.T("wall/room")), m.known(roomFields())}, {sheet.Heading(m.T("wall/way")), m.known(wayFields(m.Plan.Hangings[0].WaySteps()))},
	}}}
	blocks = append(blocks, m.cautions("wall/damp", "wall/outside", "wall/sun", "wall/cable", "wall/safety", "wall/heat", "wall/grille", "wall/lift-room")...) // above the drawings, which may need a sheet of their own
	for w, side := range m.Doc.Design.Walls {
		name := m.T("wall/wall")
		if len(m.Doc.Design.Walls) > 1 {
			name = m.T("survey/wall-number", "n", w+1, "name", side.Name)
		}
		columns := [][]sheet.Block{{m.known(wallFields(w, side))}, {}}
		if t := m.things(side); len(t.Rows) > 0 {
			columns[1] = append(columns[1], t)
		}
		columns[1] = append(columns[1], m.photoTicks())
		blocks = append(blocks, sheet.Heading(name), sheet.Beside{Shares: []float64{1, 1}, Columns: columns},
			sheet.Fitted(func(width float64) []sheet.Block { return []sheet.Block{m.drawing(m.surveyDrawing(w, width))} }))
	}
	if len(m.Doc.Assumed) > 0 {
		blocks = append(blocks, sheet.Small(m.T("survey/assumed")))
	}
	blocks = append(blocks, sheet.Heading(m.T("ask/private")), m.answers())
	return m.paper("survey", sheet.Front, blocks...)
}

// known is a table of fields, as the page has them.
func (m *maker) known(paths []string) sheet.Table {
	t := sheet.Table{Size: m.surveySize(), Columns: []sheet.Column{{Grow: true}, {Grow: true}}}
	for _, path := range paths {
		f, ok := design.Lookup(path)
		text, found := design.Text(m.Doc, path, m.Words.Units)
		if !ok || !found || text == "" {
			continue
		}
		text = f.Shown(m.Words, text)
		switch f.Kind {
		case design.KindChoice:
			text = capital(m.T("choice/" + text))
		case design.KindYesNo:
			text = m.T("survey/" + text)
		case design.KindNumber:
			text += " " + f.Unit
		}
		if f.Zero != "" && m.zero(path) {
			text = m.T(string(f.Zero))
		}
		key := "survey/known"
		if slices.Contains(m.Doc.Assumed, path) {
			key = "survey/guess"
		}
		t.Rows = append(t.Rows, []sheet.Cell{{Text: m.T(design.LabelKey(path))}, {Text: m.T(key, "value", text), Bold: true}})
	}
	return t
}

// zero reports whether a length is 0, which says that nobody has measured it.
func (m *maker) zero(path string) bool {
	v, _ := design.Get(m.Doc, path)
	l, ok := v.(interface{ IsZero() bool })
	return ok && l.IsZero()
}

// things is what is on a wall.
func (m *maker) things(w design.Wall) sheet.Table {
	unit := m.Words.Unit()
	t := sheet.Table{Size: m.surveySize(), Columns: []sheet.Column{
		{Head: m.T("survey/thing"), Grow: true}, {Head: m.T("survey/x-unit", "unit", unit), Right: true}, {Head: m.T("survey/y-unit", "unit", unit), Right: true},
		{Head: m.T("survey/size-unit", "unit", unit), Right: true},
	}}
	number := m.Words.Number
	for _, o := range w.Obstacles {
		what := capital(m.T("choice/" + o.Kind))
		if o.Note != "" && !strings.EqualFold(strings.TrimSpace(o.Note), what) { // nothing is said twice
			what = m.T("survey/noted", "what", what, "note", o.Note)
		}
		size := m.T("survey/size", "wide", number(o.Width), "high", number(o.Height))
		if o.Height.IsZero() {
			size = m.T("survey/size-ceiling", "wide", number(o.Width))
		}
		t.Rows = append(t.Rows, sheet.Row(what, number(o.X), number(o.Y), size))
	}
	return t
}

// photoTicks are the pictures that a survey brings home.
func (m *maker) photoTicks() sheet.List {
	var items []string
	for _, key := range []string{"wall", "studs", "damage", "way"} {
		items = append(items, m.T("survey/photo-"+key))
	}
	return sheet.List{Mark: sheet.Ticks, Size: m.surveySize(), Items: items}
}

// answers are the questions about the building with what was said.
func (m *maker) answers() sheet.Block {
	t := sheet.Table{Grid: true, Least: m.either(9, 5.6), Size: m.surveySize(), Columns: []sheet.Column{{Head: m.T("survey/question"), Grow: true}, {Head: m.T("survey/answer"), Grow: true}}}
	for _, path := range askedFields() {
		text, _ := design.RecordText(m.Job.Record, path, m.Words.Units)
		t.Rows = append(t.Rows, []sheet.Cell{{Text: m.T(design.LabelKey(design.RecordPrefix + path))}, {Text: m.T("survey/known", "value", text), Bold: true}})
	}
	return t
}

// surveyDrawing is a wall to scale with what is on it, where panels are kept away, and
// where they are to hang.
func (m *maker) surveyDrawing(w int, width float64) sheet.Drawing {
	const below = 16.0
	high := m.either(80, 44)
	side := m.Doc.Design.Walls[w]
	wide, tall := side.Width.Millimetres(), side.Height.Millimetres()
	k := fitted(wide, tall, width-14, high)
	return sheet.Drawing{
		Name: m.name("survey", w), Title: m.T("survey/drawing"), Width: width, Height: k.of(tall) + below + scaleHeight,
		Draw: func(p sheet.Pen) {
			o := p.In(1, 1, k.of(wide)+3, k.of(tall)+below)
			m.wallMarks(o, wall.Hung{Wall: side}, k)
			for _, z := range wall.Zones(side) {
				weight := draw.Hidden
				if z.Level == check.Stop {
					weight = draw.Visible
				}
				if z.Right > z.Left && z.Top > z.Bottom {
					o.DashedBox(k.of(z.Left), k.of(tall-z.Top), k.of(z.Right-z.Left), k.of(z.Top-z.Bottom), weight)
				}
			}
			for i, h := range m.Plan.Hangings {
				if m.Plan.Groups[i].Wall == w {
					for _, b := range h.Built.Panels {
						m.onWall(o, k, wide, tall, b.Left.Millimetres(), b.Bottom.Millimetres(), h.Built.OuterWidth.Millimetres(), h.Built.OuterHeight.Millimetres(), draw.Outline)
					}
				}
			}
			floor := k.of(tall)
			o.Line(0, floor, k.of(wide), floor, draw.Heavy)
			o.Across(0, k.of(wide), floor+sheet.DimensionRow, floor, m.Words.Number(side.Width))
			p.Upright(1, 1+floor, k.of(wide)+9, k.of(wide)+1, m.Words.Number(side.Height))
			m.scaleBar(p.In(1, 1+floor+10.5, width-1, scaleHeight), k)
		},
	}
}
