package papers

import (
	"fmt"
	"math"

	"blockfield/engine/design"
	"blockfield/engine/draw"
	"blockfield/engine/papers/sheet"
)

// Size of the drawing of a step in mm.
const (
	stepWidth  = 36.0
	stepHeight = 24.0
)

// steps draw the fourteen steps, in their order: what the hands do, or what it looks
// like when it is right. They are not to scale, and have no words. Those that show where
// the rows begin do so for the edge of the job.
func (m *maker) steps() []func(sheet.Pen) {
	from := func(show func(sheet.Pen, startEdge)) func(sheet.Pen) {
		return func(p sheet.Pen) { show(p, m.start() == design.TopEdge) }
	}
	return []func(sheet.Pen){
		stepWall, stepRest, stepMeasure, from(stepBacker), stepStop, stepCut, stepSand,
		stepCount, from(stepMark), from(stepLay), from(stepTrim), stepFinish, func(p sheet.Pen) { stepFrame(p, m.Plan.Groups[0].Design.Frame.Joint == "mitred") }, stepHang,
	}
}

// startEdge tells whether the rows begin at the top.
type startEdge bool

// at is where something of a height lies that lies at y where the rows begin at the
// bottom.
func (top startEdge) at(y, height float64) float64 {
	if top {
		return stepHeight - y - height
	}
	return y
}

// homeSteps are the fourteen steps, each with its drawing, how to know that it is right,
// and what goes wrong.
func (m *maker) homeSteps() sheet.Paper {
	t := sheet.Table{Size: 3.8, Columns: []sheet.Column{
		{Width: 18}, {Width: stepWidth + 5}, {Head: m.T("steps/what"), Grow: true}, {Head: m.T("steps/right"), Grow: true}, {Head: m.T("steps/wrong"), Grow: true},
	}}
	for i, show := range m.steps() {
		key := "steps/" + string(rune('a'+i))
		d := m.sketch(sheet.Drawing{
			Name: fmt.Sprintf("step-%02d", i+1), Title: m.T(key + "-what"), Width: stepWidth, Height: stepHeight,
			Draw: func(p sheet.Pen) { p.Group("step", func() { show(p) }) },
		})
		t.Rows = append(t.Rows, []sheet.Cell{
			{Draw: func(p sheet.Pen) {
				p.Text(0, 7, sheet.Type{Size: sheet.FigureSize(5), Face: sheet.Bold}, m.Show(i+1))
				p.Tick(11, 6.5)
			}, Height: 8},
			{Draw: func(p sheet.Pen) { d.Draw(p.In(0, 1, stepWidth, stepHeight)) }, Height: stepHeight + 2},
			{Text: m.stepText(i, key), Bold: true}, {Text: m.T(key + "-right")}, {Text: m.T(key + "-wrong")},
		})
	}
	return m.paper("steps", sheet.NoView, sheet.Small(m.T("steps/lead")), t)
}

// stepText is what a step does, on which paper it stands, and how long it lies afterwards.
func (m *maker) stepText(i int, key string) string {
	text := m.T(key + "-what")
	papers := map[int]string{3: "backer", 4: "stop-list", 5: "stop-list", 7: "count-card", 8: "backer", 9: "row-cards", 10: "trim", 11: "finish", 12: "frame", 13: "hang-sheet"}
	if name, ok := papers[i]; ok && !(m.kit() && name == "stop-list") {
		text += " " + m.T("steps/see", "paper", m.T("paper/"+name))
	}
	const rest, lay, finish = 1, 9, 11
	wait := ""
	switch i {
	case rest:
		if days := m.settlingDays(); days != nil {
			wait = m.T("steps/days", "n", days)
		}
	case lay:
		wait = m.T("steps/hours", "n", m.setHours())
	case finish:
		if days := m.dryDays(); days > 0 {
			wait = m.T("steps/days", "n", days)
		}
	}
	if wait != "" {
		text += " " + m.T("steps/wait", "span", wait)
	}
	return text
}

// arrow is a level or an upright line with a head at its end.
func arrow(p sheet.Pen, x1, y1, x2, y2 float64) {
	const long, half = 2.2, 0.9
	p.Line(x1, y1, x2, y2, draw.Visible)
	var back [4]float64 // of the head's two rear corners
	switch {
	case y1 == y2 && x2 > x1:
		back = [4]float64{x2 - long, y2 - half, x2 - long, y2 + half}
	case y1 == y2:
		back = [4]float64{x2 + long, y2 - half, x2 + long, y2 + half}
	case y2 > y1:
		back = [4]float64{x2 - half, y2 - long, x2 + half, y2 - long}
	default:
		back = [4]float64{x2 - half, y2 + long, x2 + half, y2 + long}
	}
	p.Polygon(draw.Fine, sheet.Black(), x2, y2, back[0], back[1], back[2], back[3])
}

// stepWall is a wall with its studs, a socket, and the distance to the first stud.
func stepWall(p sheet.Pen) {
	const foot = 17.5
	p.Box(1, 1, 34, foot-1, draw.Visible)
	for _, x := range []float64{8, 17, 26} {
		p.Dashed(x, 1, x, foot, draw.Hidden)
	}
	p.Box(28.5, 12, 4, 3, draw.Visible)
	p.Circle(29.8, 13.5, 0.4, draw.Fine)
	p.Circle(31.2, 13.5, 0.4, draw.Fine)
	p.Line(1, foot, 35, foot, draw.Heavy)
	p.Line(1, foot+1, 1, 23, draw.Fine)
	p.Line(8, foot+1, 8, 23, draw.Fine)
	arrow(p, 4.5, 21, 1, 21)
	arrow(p, 4.5, 21, 8, 21)
}

// stepRest is a pile of sticks with battens between its layers, so that air gets at
// each of them.
func stepRest(p sheet.Pen) {
	const side, gap = 4.2, 1.1
	p.Line(1, 23, 35, 23, draw.Heavy)
	for _, x := range []float64{5, 27} {
		p.Fill(x, 20, 4, 3, sheet.Black())
	}
	for layer := range 3 {
		y := 20 - float64(layer+1)*side - float64(layer)*gap
		for i := range 5 {
			x := 5 + float64(i)*(side+1.25)
			p.Box(x, y, side, side, draw.Outline)
			p.Line(x+1, y+side-1, x+side-1, y+1, draw.Fine)
		}
		if layer < 2 {
			p.Fill(4, y-gap, 28, gap, p.Hatch(1, 3))
			p.Box(4, y-gap, 28, gap, draw.Fine)
		}
	}
}

// stepMeasure is the end of a stick between the jaws of a calliper.
func stepMeasure(p sheet.Pen) {
	p.Box(11, 9, 12, 12, draw.Outline)
	for _, r := range []float64{2, 3.6, 5.2} {
		p.Circle(17, 15, r, draw.Fine)
	}
	p.Box(3, 2, 31, 3, draw.Visible)
	for x := 6.0; x < 33; x += 2 {
		p.Line(x, 2, x, 3.3, draw.Fine)
	}
	p.Polygon(draw.Visible, p.Hatch(2, 3), 7, 2, 11, 2, 11, 17, 9.5, 17, 7, 8)
	p.Polygon(draw.Visible, p.Hatch(2, 3), 27, 2, 23, 2, 23, 17, 24.5, 17, 27, 8)
}

// stepBacker is a backer with two straight edges, a right angle and its diagonals.
func stepBacker(p sheet.Pen, start startEdge) {
	const x, y, w, h = 3.0, 2.0, 30.0, 20.0
	p.Box(x, y, w, h, draw.Visible)
	p.Dashed(x, y, x+w, y+h, draw.Hidden)
	p.Dashed(x+w, y, x, y+h, draw.Hidden)
	p.Line(x, y, x, y+h, draw.Heavy)
	p.Line(x, start.at(y+h, 0), x+w, start.at(y+h, 0), draw.Heavy)
	p.Box(x, start.at(y+h-4, 4), 4, 4, draw.Visible)
}

// stepStop is fence, blade, block and stop, with three blocks under a straight-edge.
func stepStop(p sheet.Pen) {
	p.Fill(1, 2, 34, 2.6, p.Hatch(1, 3))
	p.Box(1, 2, 34, 2.6, draw.Visible)
	p.Box(1, 4.6, 15, 4.4, draw.Outline)
	p.Line(17, 1, 17, 11.5, draw.Heavy)
	p.Box(18, 4.6, 9, 4.4, draw.Outline)
	p.Fill(27, 0.8, 3, 9.5, sheet.Black())
	for i := range 3 {
		p.Box(8+float64(i)*7, 17, 5, 6, draw.Outline)
	}
	p.Box(4, 15, 28, 2, draw.Visible)
}

// stepCut is a stick from which blocks are cut, with their tally in tens.
func stepCut(p sheet.Pen) {
	p.Box(1, 4, 17, 5, draw.Outline)
	p.Line(19.2, 1, 19.2, 12, draw.Heavy)
	for i := range 3 {
		p.Box(20.5+float64(i)*5.2, 4, 4.2, 5, draw.Outline)
	}
	for ten := range 2 {
		x := 4 + float64(ten)*15
		p.Box(x, 15, 13, 7.5, draw.Visible)
		p.Line(x+2.2, 21, x+10.8, 16.5, draw.Visible)
		if ten == 0 {
			p.Line(x+2.2, 16.5, x+10.8, 21, draw.Visible)
		}
	}
}

// stepSand is a block under a sanding block, which goes to and fro, by a low lamp.
func stepSand(p sheet.Pen) {
	p.Polygon(draw.Outline, draw.Fill("none"), 14, 13, 26, 13, 27, 14, 27, 23, 13, 23, 13, 14)
	p.Fill(14, 9.2, 12, 3.2, p.Hatch(2, 3))
	p.Box(14, 9.2, 12, 3.2, draw.Visible)
	arrow(p, 20, 6, 11, 6)
	arrow(p, 20, 6, 29, 6)
	p.Polygon(draw.Visible, sheet.White(), 2, 15, 6, 13, 6, 18, 2, 17)
	for _, y := range []float64{13.8, 15.5, 17.2} {
		p.Line(7.5, y, 11.5, y, draw.Fine)
	}
}

// stepCount is three bins of blocks, the last of which is short by one.
func stepCount(p sheet.Pen) {
	for bin := range 3 {
		x := 1.5 + float64(bin)*11.5
		p.Line(x, 5, x, 22, draw.Outline)
		p.Line(x, 22, x+10, 22, draw.Outline)
		p.Line(x+10, 22, x+10, 5, draw.Outline)
		for i := range 6 {
			bx, by := x+1.2+float64(i%2)*4, 17.8-float64(i/2)*4.2
			if bin == 2 && i == 5 {
				p.DashedBox(bx, by, 3.6, 3.6, draw.Hidden)
				continue
			}
			p.Fill(bx, by, 3.6, 3.6, p.Hatch(bin, 3))
			p.Box(bx, by, 3.6, 3.6, draw.Visible)
		}
	}
}

// stepMark is a backer with its start corner and lines for every fifth row.
func stepMark(p sheet.Pen, start startEdge) {
	const x, y, w, h = 3.0, 2.0, 30.0, 20.0
	p.Box(x, y, w, h, draw.Visible)
	for _, at := range []float64{5, 10, 15} {
		p.Line(x, y+at, x+w, y+at, draw.Fine)
	}
	p.Line(x, y, x, y+h, draw.Heavy)
	foot, tip := start.at(y+h, 0), start.at(y+h-6, 0)
	p.Line(x, foot, x+w, foot, draw.Heavy)
	p.Polygon(draw.Fine, sheet.Black(), x, foot, x+6, foot, x, tip)
}

// stepLay is a field of three rows, the fourth under way, between two straight-edges.
func stepLay(p sheet.Pen, start startEdge) {
	const side, left, foot = 4.0, 5.0, 20.0
	bar := func(x, y, w, h float64) {
		p.Fill(x, start.at(y, h), w, h, p.Hatch(1, 3))
		p.Box(x, start.at(y, h), w, h, draw.Visible)
	}
	p.Box(left, start.at(2, foot-2), 28, foot-2, draw.Visible)
	bar(left-2.2, 2, 2.2, foot+0.2)
	bar(left-2.2, foot, 30.2, 2.2)
	for row := range 4 {
		for column := range 7 {
			if row == 3 && column > 3 {
				break
			}
			x, y := left+float64(column)*side, start.at(foot-float64(row+1)*side, side)
			p.Fill(x, y, side, side, p.Hatch((row*2+column*3)%4, 5))
			p.Box(x, y, side, side, draw.Visible)
		}
	}
	arrow(p, 23, start.at(6, 0), 29, start.at(6, 0))
}

// stepTrim is a field with what comes off two of its edges, and the blade.
func stepTrim(p sheet.Pen, start startEdge) {
	strip := func(x, y, w, h float64) {
		p.Fill(x, start.at(y, h), w, h, p.Hatch(1, 3))
		p.DashedBox(x, start.at(y, h), w, h, draw.Hidden)
	}
	p.Box(2, start.at(7, 16), 26, 16, draw.Outline)
	strip(2, 4.5, 28.5, 2.5)
	strip(28, 7, 2.5, 16)
	p.Line(1, start.at(7, 0), 30, start.at(7, 0), draw.Heavy)
	const teeth, long = 12, 0.7
	for i := range teeth {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / teeth)
		x, y := 31.8+3*cos, start.at(4.5, 0)+3*sin
		p.Line(x, y, x+long*(cos-sin), y+long*(sin+cos), draw.Visible)
	}
	p.Circle(31.8, start.at(4.5, 0), 3, draw.Visible)
	p.Circle(31.8, start.at(4.5, 0), 0.6, draw.Visible)
}

// stepFinish is a brush over blocks of several heights.
func stepFinish(p sheet.Pen) {
	p.Fill(2, 21, 32, 2, p.Hatch(1, 3))
	p.Box(2, 21, 32, 2, draw.Visible)
	for i, h := range []float64{6, 10, 4, 8, 3, 9} {
		x := 3 + float64(i)*5
		p.Box(x, 21-h, 5, h, draw.Outline)
		if i < 3 {
			p.Line(x+0.4, 21-h, x+4.6, 21-h, draw.Heavy)
		}
	}
	p.Polygon(draw.Visible, p.Hatch(1, 3), 18.5, 12, 22.5, 12, 22, 7.5, 19, 7.5)
	p.Box(19, 5.5, 3, 2, draw.Visible)
	p.Polygon(draw.Visible, sheet.White(), 19.7, 5.5, 21.3, 5.5, 21.1, 1, 19.9, 1)
	arrow(p, 24.5, 4, 31, 4)
}

// stepFrame is the back of a panel in its frame, with cleat, spacer and screws.
func stepFrame(p sheet.Pen, mitred bool) {
	p.Box(3, 1.5, 30, 21, draw.Outline)
	p.Box(4.5, 3, 27, 18, draw.Visible)
	for _, corner := range [][4]float64{{3, 1.5, 4.5, 3}, {33, 1.5, 31.5, 3}, {3, 22.5, 4.5, 21}, {33, 22.5, 31.5, 21}} {
		if mitred {
			p.Line(corner[0], corner[1], corner[2], corner[3], draw.Fine)
		} else { // the upright boards stand between the others
			p.Line(corner[0], corner[3], corner[2], corner[3], draw.Fine)
		}
	}
	p.Fill(6.5, 5.5, 23, 4, p.Hatch(1, 3))
	p.Box(6.5, 5.5, 23, 4, draw.Outline)
	p.Box(6.5, 17.5, 23, 2, draw.Visible)
	for _, x := range []float64{9, 14, 22, 27} {
		p.Fill(x-1.2, 6.3, 2.4, 2.4, sheet.White())
		p.Circle(x, 7.5, 1, draw.Visible)
	}
}

// stepHang is two people who lift a panel onto its strip.
func stepHang(p sheet.Pen) {
	const foot = 23.0
	p.Line(1, foot, 35, foot, draw.Heavy)
	p.Line(10, 6, 26, 6, draw.Heavy)
	p.Box(11.5, 8.5, 13, 8, draw.Outline)
	for _, x := range []float64{11.5, 16.5, 21.5} {
		p.Line(x, 8.5, x, 16.5, draw.Fine)
	}
	p.Line(11.5, 12.5, 24.5, 12.5, draw.Fine)
	arrow(p, 18, 21.5, 18, 17.8)
	p.Person(7, foot, 19)
	p.Person(29, foot, 19)
}
