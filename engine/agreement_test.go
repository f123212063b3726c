package engine_test

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"blockfield/engine"
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/money"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ours is a price book of a workshop's own, in a currency.
func ours(currency string) design.Book {
	b := design.ConfirmBook(design.DefaultBook(), "")
	b.Currency = currency
	return b
}

// today is the day of all that is done here.
const today = "2026-03-02"

// followed is the job of a document with a record.
func followed(t testing.TB, doc design.Document, b design.Book, rec design.Record) engine.Job {
	t.Helper()
	r, err := engine.Plan(doc.Design, b)
	require.NoError(t, err)
	return engine.Follow(doc.Design, r, rec, today)
}

// agree returns a document with its offer, and the record in which it is locked.
func agree(t testing.TB, doc design.Document, b design.Book) (design.Document, design.Record) {
	t.Helper()
	j := followed(t, doc, b, design.NewRecord())
	r := j.Plan
	offer, why := engine.MakeOffer(r, b, today, 30)
	require.Equal(t, words.Phrase{}, why)
	doc.Offer = &offer
	rec, why := j.Locking(doc, b, today)
	require.Equal(t, words.Phrase{}, why)
	require.NoError(t, design.ValidateRecord(rec))
	back, err := design.DecodeRecord(design.EncodeRecord(rec))
	require.NoError(t, err)
	return doc, back
}

// gates are the codes of the Stops at a gate and before it.
func gates(j engine.Job, gate check.Gate) []string { return codes(j.Plan.During(j).ShutAt(gate)) }

// A change after the lock shuts the gate of buying until its slip is accepted; what was
// agreed on is then the price of the new design and the fee.
func TestAChangeAfterTheLock(t *testing.T) {
	b := ours("EUR")
	doc, rec := agree(t, design.Default(), b)
	j := followed(t, doc, b, rec)
	assert.Equal(t, "agreed", j.State())
	assert.NotContains(t, gates(j, check.Cut), "price/changed-after-lock")
	first, ok := j.Agreed()
	require.True(t, ok)
	assert.Equal(t, j.Plan.Price.Gross, first.Gross)
	_, why := j.Slip(b, doc.Design.Money, today)
	assert.Equal(t, "slip/unchanged", why.Key)

	changed := edit(t, doc, group+"wood = oak")
	j = followed(t, changed, b, rec)
	assert.NotContains(t, gates(j, check.Offer), "price/changed-after-lock")
	assert.Contains(t, gates(j, check.Buy), "price/changed-after-lock")
	assert.Contains(t, gates(j, check.Cut), "price/changed-after-lock")
	rec, why = j.Slip(b, changed.Design.Money, today)
	require.Equal(t, words.Phrase{}, why)
	require.NoError(t, design.ValidateRecord(rec))
	j = followed(t, changed, b, rec)
	assert.Contains(t, gates(j, check.Buy), "price/changed-after-lock", "not accepted yet")
	require.Len(t, j.Record.Slips, 1)
	s := j.Record.Slips[0]
	want := j.Plan.Price.Net.Sub(first.Net)
	assert.Equal(t, money.New(want.Minor+60_00, "EUR").Plain(), amount(s.Net))
	assert.Equal(t, money.New(j.Plan.Price.Tax.Sub(first.Tax).Minor+12_00, "EUR").Plain(), amount(s.Tax), "20 % of the fee as well")

	// Priced anew as long as nobody has accepted it.
	wider := edit(t, changed, group+"width = 1300 mm")
	j = followed(t, wider, b, rec)
	_, why = j.Accepting(today)
	assert.Equal(t, "slip/other-design", why.Key)
	rec, why = j.Slip(b, wider.Design.Money, today)
	require.Equal(t, words.Phrase{}, why)
	require.Len(t, rec.Slips, 1)
	j = followed(t, wider, b, rec)
	rec, why = j.Accepting(today)
	require.Equal(t, words.Phrase{}, why)
	j = followed(t, wider, b, rec)
	assert.NotContains(t, gates(j, check.Cut), "price/changed-after-lock")
	now, _ := j.Agreed()
	assert.Equal(t, j.Plan.Price.Gross.Minor+72_00, now.Gross.Minor, "the new price, and the fee with its tax")
	assert.Equal(t, j.Plan.Revision, now.Revision)

	// A second one counts from there; the fee is asked for again, and the days add up.
	back := edit(t, wider, group+"wood = poplar")
	j = followed(t, back, b, rec)
	rec, why = j.Slip(b, back.Design.Money, today)
	require.Equal(t, words.Phrase{}, why)
	assert.Equal(t, 2, rec.Slips[1].Number)
	assert.Equal(t, rec.Slips[0].Revision, rec.Slips[1].Before)
	assert.Negative(t, int64(rec.Slips[1].Gross), "poplar is cheaper by more than the fee")
	j = followed(t, back, b, rec)
	for i, want := range [][2]string{{"poplar", "oak"}, {"oak", "poplar"}} {
		from, to, ok := j.Changed(i)
		require.True(t, ok)
		assert.Equal(t, want, [2]string{from.Design.Walls[0].Groups[0].Wood, to.Design.Walls[0].Groups[0].Wood}, "each slip from the one before")
	}
	rec, _ = j.Accepting(today)
	j = followed(t, back, b, rec)
	now, _ = j.Agreed()
	assert.Equal(t, j.Plan.Price.Gross.Minor+2*72_00, now.Gross.Minor)

	// Somebody may sign for a change without a slip.
	other := edit(t, back, group+"wood = ash")
	j = followed(t, other, b, rec)
	rec = j.Signing("price/changed-after-lock", "", today)
	rec.SignOffs[0].Name, rec.SignOffs[0].Reason = "A. Owner", "a gift"
	assert.NotContains(t, gates(followed(t, other, b, rec), check.Cut), "price/changed-after-lock")
}

func amount(a design.Amount) string {
	return money.Priced(a.Steps(), 1, design.Units(1).Steps(), "EUR", money.HalfAway).Plain()
}

// A lock needs the offer of this very design, by this book, within its days.
func TestLockNeedsTheOffer(t *testing.T) {
	b := ours("EUR")
	doc, locked := agree(t, design.Default(), b)
	why := func(doc design.Document, b design.Book, today string) string {
		_, p := followed(t, doc, b, design.NewRecord()).Locking(doc, b, today)
		return p.Key
	}
	assert.Equal(t, "lock/no-offer", why(design.Default(), b, today))
	assert.Equal(t, "lock/no-offer", why(edit(t, doc, group+"wood = oak"), b, today))
	assert.Equal(t, "offer/no-day", why(doc, b, ""))
	assert.Empty(t, why(doc, b, doc.Offer.ValidUntil))
	assert.Equal(t, "lock/lapsed", why(doc, b, "2026-12-31"))
	other := b
	other.Rates.Shop = design.Units(50)
	assert.Equal(t, "lock/other-book", why(doc, other, today))
	j := followed(t, doc, b, locked)
	_, p := j.Locking(doc, b, today)
	assert.Equal(t, "lock/is-locked", p.Key)
	rec, p := j.Unlocking()
	assert.Empty(t, p.Key)
	assert.Nil(t, rec.Lock)
	called, _ := j.Calling(today)
	_, p = followed(t, doc, b, called).Unlocking()
	assert.Equal(t, "lock/invoiced", p.Key)
	dear := followed(t, edit(t, doc, group+"wood = oak"), ours("USD"), locked)
	_, p = dear.Slip(ours("USD"), doc.Design.Money, today)
	assert.Equal(t, "slip/other-currency", p.Key)
}

// The worked job: half at the order, 40 % when ready, the rest when hung, of 3144.00; a
// change of 100.00 before the second stage is in it and in the last.
func TestStageInvoicesByHand(t *testing.T) {
	b := ours("EUR")
	doc, rec := agree(t, design.Default(), b)
	due := func(rec design.Record) (all []string) {
		for _, d := range followed(t, doc, b, rec).Payments() {
			all = append(all, d.Net.Plain()+" + "+d.Tax.Plain()+" = "+d.Gross.Plain())
		}
		return all
	}
	assert.Equal(t, []string{"1310.00 + 262.00 = 1572.00", "1048.00 + 209.60 = 1257.60", "262.00 + 52.40 = 314.40"}, due(rec))
	rec, why := followed(t, doc, b, rec).Calling(today)
	require.Equal(t, words.Phrase{}, why)
	rec.Slips = []design.Slip{{
		Number: 1, Day: today, Before: rec.Lock.Revision, Revision: rec.Lock.Revision, Accepted: today,
		Net: design.Units(100), Tax: design.Units(20), Gross: design.Units(120),
	}}
	// 50 % of 3264 are 1632: 60 were missed; 40 % are 1305.60.
	assert.Equal(t, []string{"1310.00 + 262.00 = 1572.00", "1138.00 + 227.60 = 1365.60", "272.00 + 54.40 = 326.40"}, due(rec))
	for range 2 {
		rec, why = followed(t, doc, b, rec).Calling(today)
		require.Equal(t, words.Phrase{}, why)
	}
	_, why = followed(t, doc, b, rec).Calling(today)
	assert.Equal(t, "call/none", why.Key)
	rec.Slips = append(rec.Slips, design.Slip{
		Number: 2, Day: today, Before: rec.Lock.Revision, Revision: rec.Lock.Revision, Accepted: today, Net: -design.Units(10), Tax: -design.Units(2), Gross: -design.Units(12),
	})
	all := due(rec)
	require.Len(t, all, 4, "what is left after the last stage")
	assert.Equal(t, "-10.00 + -2.00 = -12.00", all[3])
}

// However prices, stages and changes fall, and whenever a stage is called: invoices are
// net and tax, and all of them are the agreed price to the smallest unit.
func TestInvoicesAddUp(t *testing.T) {
	rnd := rand.New(rand.NewPCG(4, 20))
	for range 300 {
		currency := []string{"EUR", "JPY", "KWD"}[rnd.IntN(3)]
		digits, _ := money.Digits(currency)
		unit := design.Units(1).Steps()
		for range digits {
			unit /= 10
		}
		some := func(most int64) design.Amount { return design.Amount((rnd.Int64N(most) + 1) * unit) }
		rec := design.NewRecord()
		net, tax := some(900_000), some(150_000)
		rec.Lock = &design.Lock{Revision: "000000", Currency: currency, Net: net, Tax: tax, Gross: net + tax}
		left := 100.0
		for i := range rnd.IntN(5) + 1 {
			part := float64(rnd.IntN(int(left*100))) / 100
			rec.Lock.Stages = append(rec.Lock.Stages, design.Stage{Name: strconv.Itoa(i), Percent: part})
			left -= part
		}
		rec.Lock.Stages[len(rec.Lock.Stages)-1].Percent += left
		j := engine.Job{Record: rec}
		for len(j.Record.Calls) < len(rec.Lock.Stages) {
			if rnd.IntN(3) == 0 && len(j.Record.Slips) < 5 {
				more, less := some(50_000), some(50_000)
				n, v := more-less, (more-less)/10/design.Amount(unit)*design.Amount(unit)
				j.Record.Slips = append(j.Record.Slips, design.Slip{Number: len(j.Record.Slips) + 1, Accepted: today, Net: n, Tax: v, Gross: n + v})
				continue
			}
			next, why := j.Calling(today)
			require.Equal(t, words.Phrase{}, why)
			j.Record = next
		}
		a, _ := j.Agreed()
		sums := [3]money.Money{money.New(0, currency), money.New(0, currency), money.New(0, currency)}
		for i, c := range j.Record.Calls {
			require.Equal(t, c.Gross, c.Net+c.Tax)
			for k, x := range []design.Amount{c.Net, c.Tax, c.Gross} {
				sums[k] = sums[k].Add(money.Priced(x.Steps(), 1, design.Units(1).Steps(), currency, money.HalfAway))
			}
			if i == 0 && len(rec.Lock.Stages) > 1 && len(j.Record.Slips) == 0 {
				assert.LessOrEqual(t, float64(c.Gross), float64(rec.Lock.Gross)*rec.Lock.Stages[0].Percent/100+1, "no more than its share")
			}
		}
		assert.Equal(t, [3]money.Money{a.Net, a.Tax, a.Gross}, sums)
	}
}
