package papers

import (
	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/papers/sheet"
)

// kit reports whether the workshop makes a kit of blocks.
func (m *maker) kit() bool { return m.Doc.Design.Work.Scope() == design.KitScope }

// handOver takes the view of a client who builds from a kit or a plan: hours of a first
// panel at home, all that is bought for it. They are reckoned with the example figures,
// since the workshop's own times and prices are nobody else's; no cost is printed. The
// revision stays that of the job.
func (m *maker) handOver() {
	d := m.Doc.Design
	if scope := d.Work.Scope(); scope != design.KitScope && scope != design.PlanScope {
		return
	}
	d.Work.OwnBuild, d.Work.Hung = true, true
	plan, err := engine.Plan(d, design.DefaultBook())
	if err != nil {
		return // a workshop's design that can be planned can be planned at home
	}
	plan.Revision, plan.BookCode = m.Plan.Revision, ""
	m.Plan, m.Book = plan, design.DefaultBook()
	m.Job = engine.Follow(d, plan, m.Job.Record, m.Today)
}

// buildBook is what somebody at home builds by. With a kit the blocks are there.
func (m *maker) buildBook() ([]sheet.Paper, []table) {
	all := []sheet.Paper{m.fewest(m.before), m.fewest(m.safety), m.fewest(m.shopping), below(m.fewest(m.tools)), m.homeSteps(), m.sheetCutting(), below(m.backerSheet())}
	tables := []table{m.stock(), m.counts()}
	if !m.kit() {
		all, tables = append(all, m.stopList()), []table{m.stock(), m.cuts(), m.counts()}
	}
	all = append(all, below(m.countCard()), below(m.recutList()), below(m.binLabels()))
	all = append(all, m.fewestOf(func() []sheet.Paper { return []sheet.Paper{m.layOrder(), below(m.troubles())} })...)
	return append(all,
		m.rowCards(), m.fewest(m.trimSheet), m.finishSchedule(), below(m.frameList()), m.fireRecord(), m.fewest(m.cleatPaper), m.fewest(m.rearMap), m.weighSlip(), m.liftingPlan(), below(m.wayIn()), m.fewest(m.hangSheet), m.standSheet(),
	), append(tables, m.fields()...)
}
