package bench

import (
	"errors"
	"fmt"

	"blockfield/engine/cut"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/panel"
)

// Habits of buying boards. Common practice, no source.
const (
	frameWaste   = 1.15 // of frame board by the running metre, for mitres, test cuts and faults
	cleatStripMM = 90   // width of the strips that cleats and spacers are cut from
	cleatWaste   = 1.1  // of strips by the running metre
	cleatHalves  = 2    // on the panel and on the wall
	testFitMM    = 6    // longer than drawn, until the frame has been held to its panel
)

// frames pools the frame boards by wood, thickness and width, and plans how the
// pieces of the frames come out of them.
func (b *Bill) frames(in design.Bench, jobs []job, there *pile, prices Prices, by effort) error {
	var pieces []boardPieces
	for _, j := range jobs {
		if !j.built.Framed {
			continue
		}
		f := j.design.Frame
		i := b.frameStock(FrameStock{Wood: f.Wood, Thickness: f.Thickness, Board: f.Board})
		if i == len(pieces) {
			pieces = append(pieces, boardPieces{})
		}
		b.Frame[i].NeedM += float64(j.panels()) * j.built.FrameRunning.Metres()
		pieces[i].add(j, TestFit(), func(p panel.Part) int {
			if p.Kind == panel.FramePart {
				return p.Count
			}
			return 0
		})
		pieces[i].least = length.Max(pieces[i].least, j.built.FrameDepth)
	}
	for i := range b.Frame {
		f := &b.Frame[i]
		offers := there.offers(in.BoardLength, f.Board, f.Thickness, func(s design.Stock) bool {
			return s.Wood == f.Wood && s.Thickness.Same(f.Thickness) && s.Width.Cmp(pieces[i].least) >= 0
		})
		weighed(offers, prices.board(f.Wood))
		var err error
		if f.Cuts, f.BoughtM3, err = pieces[i].cut(in, offers, there, by.share(len(b.Frame))); err != nil {
			return err
		}
		if f.Cuts.Planned() {
			there.add(f.Wood, offers, f.Cuts.Plan.Boards)
		}
		if f.BoughtM = f.Cuts.boughtM(); !f.Cuts.Planned() {
			f.BoughtM = f.NeedM * frameWaste
			f.BoughtM3 = f.BoughtM * f.Thickness.Metres() * f.Board.Metres()
		}
	}
	return nil
}

// frameStock returns the index of the line for a board, which it adds where it is
// missing.
func (b *Bill) frameStock(want FrameStock) int {
	for i, f := range b.Frame {
		if f.Wood == want.Wood && f.Thickness.Same(want.Thickness) && f.Board.Same(want.Board) {
			return i
		}
	}
	b.Frame = append(b.Frame, want)
	return len(b.Frame) - 1
}

// cleats pools the strips for cleats and spacers by their thickness. What is left
// of the frame boards serves where it is thick enough and wide enough.
func (b *Bill) cleats(in design.Bench, jobs []job, there *pile, by effort) error {
	var pieces []boardPieces
	for n, j := range jobs {
		halves, high := cleatHalves, b.Groups[n].StripM2
		if high > 0 {
			halves = 1 // the other one is a board of its own
			b.Cleat.BoughtM3 += high * j.design.Cleat.Thickness.Metres() * cleatWaste
		}
		i := b.strip(j.design.Cleat.Thickness)
		if i == len(pieces) {
			pieces = append(pieces, boardPieces{})
		}
		b.Cleat.Strips[i].NeedM += pieces[i].add(j, length.Length{}, func(p panel.Part) int {
			switch p.Kind {
			case panel.CleatPart:
				pieces[i].least = length.Max(pieces[i].least, p.Height)
				return halves * p.Count
			case panel.SpacerPart:
				return p.Count
			}
			return 0
		})
	}
	for i := range b.Cleat.Strips {
		s := &b.Cleat.Strips[i]
		strip := StripWidth()
		offers := there.offers(in.BoardLength, strip, s.Thickness, func(w design.Stock) bool {
			return w.Owned && w.Thickness.Same(s.Thickness) && w.Width.Cmp(pieces[i].least) >= 0
		})
		weighed(offers, func(offer) int64 { return 0 })
		var err error
		var boughtM3 float64
		if s.Cuts, boughtM3, err = pieces[i].cut(in, offers, there, by.share(len(b.Cleat.Strips))); err != nil {
			return err
		}
		if s.BoughtM = s.Cuts.boughtM(); !s.Cuts.Planned() {
			s.BoughtM = s.NeedM * cleatWaste
			boughtM3 = s.BoughtM * strip.Metres() * s.Thickness.Metres()
		}
		b.Cleat.RunningM += s.NeedM
		b.Cleat.BoughtM3 += boughtM3
	}
	return nil
}

// strip returns the index of the strips of a thickness, which it adds where they
// are missing.
func (b *Bill) strip(thickness length.Length) int {
	for i, s := range b.Cleat.Strips {
		if s.Thickness.Same(thickness) {
			return i
		}
	}
	b.Cleat.Strips = append(b.Cleat.Strips, Strip{Thickness: thickness})
	return len(b.Cleat.Strips) - 1
}

// TestFit is how much longer than drawn the pieces of a frame are cut at first.
func TestFit() length.Length { return length.MM(testFitMM) }

// StripWidth is the width of the strips that cleats and spacers are cut from.
func StripWidth() length.Length { return length.MM(cleatStripMM) }

// boardPieces are what is cut out of one kind of board.
type boardPieces struct {
	pieces []cut.Piece
	least  length.Length // the narrowest board that does
}

// add adds the parts of all panels of a job that count says, each so much longer
// than drawn, and returns their running length in m.
func (p *boardPieces) add(j job, longer length.Length, count func(panel.Part) int) (runningM float64) {
	for _, built := range j.built.Panels {
		for _, part := range built.Parts {
			n := count(part)
			if n == 0 {
				continue
			}
			long := length.Max(part.Width, part.Height).Add(longer)
			p.pieces = append(p.pieces, cut.Piece{Length: long.Nanometres(), Count: n})
			runningM += float64(n) * long.Metres()
		}
	}
	return runningM
}

// cut plans how the pieces come out of boards, takes what it uses from the pile and
// returns what is bought in m³. It returns nil where boards are bought by the
// running metre, and no plan where a piece is longer than any board. No tail is
// kept: a piece of a frame is long enough to hold.
func (p *boardPieces) cut(in design.Bench, offers []offer, there *pile, by effort) (*BoardCuts, float64, error) {
	if in.BoardLength.IsZero() {
		return nil, 0, nil
	}
	plan, err := by.plans.Solve(cut.Problem{
		Bars: bars(offers, 0), Kerf: in.Kerf.Nanometres(), EndTrim: in.EndTrim.Nanometres(), Pieces: p.pieces, Goal: cut.Cost,
	}, by.steps)
	var tooLong *cut.PieceError
	switch {
	case errors.As(err, &tooLong):
		return &BoardCuts{TooLong: length.Nanometres(tooLong.Length, in.BoardLength.Notation())}, 0, nil
	case errors.Is(err, cut.ErrSupply):
		return &BoardCuts{TooLong: p.longest(in.BoardLength.Notation())}, 0, nil
	case err != nil:
		return nil, 0, fmt.Errorf("design.bench: %w", err)
	}
	offers, _ = counted(offers, plan, 0)
	there.take(offers)
	out := &BoardCuts{Plan: plan}
	boughtM3 := 0.0
	for _, o := range offers {
		out.Bars = append(out.Bars, o.Bar)
		boughtM3 += float64(o.Bought) * o.m3()
	}
	return out, boughtM3, nil
}

func (p *boardPieces) longest(n length.Notation) length.Length {
	var most int64
	for _, piece := range p.pieces {
		most = max(most, piece.Length)
	}
	return length.Nanometres(most, n)
}

// Planned reports whether there is a plan; boards are bought by the running metre
// where there is none.
func (c *BoardCuts) Planned() bool { return c != nil && c.TooLong.IsZero() }

func (c *BoardCuts) boughtM() float64 {
	if c == nil {
		return 0
	}
	sum := 0.0
	for _, bar := range c.Bars {
		sum += float64(bar.Bought) * bar.Length.Metres()
	}
	return sum
}
