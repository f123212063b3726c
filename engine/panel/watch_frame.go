package panel

import (
	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/words"
)

// shallowFrame compares the board that is bought for the frame with what it has
// to cover: cleat, backer and tallest block, and the wanted reveal.
//
// A board that covers the stack but not the reveal is a Caution. One that is
// narrower than the stack is a Stop: the blocks stand proud of the frame, or
// the frame misses the wall. Where the blocks are wanted to stand proud, by a
// reveal below zero, the board has to be as wide as was wanted and no wider.
func (g Group) shallowFrame(in design.Group, path string) []check.WatchOut {
	board, need := in.Frame.Board, g.Stack.Add(in.Frame.Reveal)
	if !g.Framed || board.Cmp(need) >= 0 {
		return nil
	}
	wide := need.CeilAs(board.Notation())
	w := check.WatchOut{
		Code: "frame/less-reveal", Level: check.Caution, Gate: check.Buy,
		Args: words.Args{
			"stack": g.Stack, "board": board, "need": wide,
			"reveal": board.Sub(g.Stack), "wanted": in.Frame.Reveal,
		},
		Field: path + ".frame.board", Source: check.Computed,
		Fix: &check.Fix{Path: path + ".frame.board", Value: wide.String()},
	}
	if board.Cmp(g.Stack) < 0 {
		w.Code, w.Level = "frame/too-shallow", check.Stop
		w.Args = words.Args{
			"stack": g.Stack, "board": board, "need": wide,
			"proud": g.Stack.Sub(board), "tallest": TallestFor(in, board),
		}
	}
	return []check.WatchOut{w}
}

// TallestFor is the tallest block that a board covers with the wanted reveal.
func TallestFor(in design.Group, board length.Length) length.Length {
	rest := board.Sub(in.Frame.Reveal).Sub(in.Cleat.Thickness).Sub(in.Backer.Thickness)
	return length.Max(rest, length.MM(0))
}
