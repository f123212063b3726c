package session

import (
	"errors"
	"math"
	"slices"
	"strconv"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/scene"
	"blockfield/engine/words"
)

// Handle is where a size of a group can be taken hold of on the picture.
type Handle struct {
	Path  string  `json:"path"` // of the group
	Side  string  `json:"side"` // "across" or "down"
	X     float64 `json:"x"`    // place on the picture, in its pixels
	Y     float64 `json:"y"`
	Label string  `json:"label"`
	Now   int     `json:"now"`  // blocks over all panels
	Text  string  `json:"text"` // the same with their size

	perMM [2]float64 // how far a place one millimetre further out lies from this one, in pixels
	side  engine.Side
}

// stretch is a size that somebody changes on the picture.
type stretch struct {
	path, side string
	held       bool
	reach      float64 // of the picture when it was taken hold of
	moved      bool    // the history has what was before
}

// stretched answers what concerns the handles on the picture, whose size in pixels comes
// with each request. Kinds: "handles" says where they are; "grab" takes hold of one, by
// path and side; "move" brings it near a place of the picture; "key" adds blocks to it;
// "drop" lets go. While one is held what is in the picture keeps its size there.
func (s *Session) stretched(req Request) Response {
	var res Response
	switch req.Kind {
	case "handles":
	case "grab":
		sc, err := s.pictured()
		if err != nil {
			return s.refuse(err)
		}
		s.stretch = stretch{path: req.Path, side: req.Name, held: true, reach: sc.Reach(shape(req))}
		return Response{}
	case "move":
		res = s.pulled(req)
	case "key":
		s.stretch = stretch{path: req.Path, side: req.Name}
		res = s.pulled(req)
		s.stretch = stretch{}
	case "drop":
		moved := s.stretch.moved
		s.stretch = stretch{}
		if moved {
			res = s.whole("")
		}
	default:
		return s.refuse(errors.New("internal error: no such kind: " + strconv.Quote(req.Kind)))
	}
	res.Handles = s.handles(req)
	return res
}

// shape is the width of the page's picture by its height.
func shape(req Request) float64 { return float64(max(req.Width, 1)) / float64(max(req.Height, 1)) }

// steadied returns the scene as it is shown while a size is pulled at: at the scale that
// it had before.
func (s *Session) steadied(sc scene.Scene, shape float64) scene.Scene {
	if s.stretch.held {
		sc.Camera = sc.Camera.ZoomBy(sc.Reach(shape) / s.stretch.reach)
	}
	return sc
}

// handles are those of the groups in the picture, at the middle of the right edge and of
// the lower one. What is shown in another way than it hangs has none, nor has a picture that
// is hidden and has no size.
func (s *Session) handles(req Request) []Handle {
	sc, err := s.pictured()
	if err != nil || s.alone != "" || req.Width < 1 || req.Height < 1 {
		return nil
	}
	sc = s.steadied(sc, shape(req))
	where := sc.Where(req.Width, req.Height)
	var all []Handle
	first := 0
	for _, g := range s.now.plan.Groups {
		end := first + len(g.Built.Panels)
		if g.Wall != 0 || end > len(sc.Panels) {
			continue
		}
		left, right, bottom, top, front := around(sc, first, end)
		first = end
		if h, ok := handle(where, right, (bottom+top)/2, front, 1, 0); ok {
			all = append(all, s.named(h, g, "across", g.Across()))
		}
		if h, ok := handle(where, (left+right)/2, bottom, front, 0, -1); ok {
			all = append(all, s.named(h, g, "down", g.Down()))
		}
	}
	return all
}

// around is the box round the panels of a scene from first to before end, as scene.Box.
func around(sc scene.Scene, first, end int) (left, right, bottom, top, front float64) {
	left, right, bottom, top, front = sc.Box(first)
	for i := first + 1; i < end; i++ {
		l, r, b, t, f := sc.Box(i)
		left, right, bottom, top, front = min(left, l), max(right, r), min(bottom, b), max(top, t), max(front, f)
	}
	return left, right, bottom, top, front
}

// handle is one at a point of the room, that grows along x or y.
func handle(where func(x, y, z float64) (px, py float64, ok bool), x, y, z, alongX, alongY float64) (Handle, bool) {
	const mm = 1e-3
	px, py, ok := where(x, y, z)
	qx, qy, also := where(x+alongX*mm, y+alongY*mm, z)
	return Handle{X: px, Y: py, perMM: [2]float64{qx - px, qy - py}}, ok && also
}

func (s *Session) named(h Handle, g engine.Group, name string, side engine.Side) Handle {
	h.Path, h.Side, h.side, h.Now = g.Path, name, side, side.Blocks*side.Panels
	say := s.reader().Say
	h.Label = say("stage/size-" + name)
	h.Text = say("snap/"+name, words.Args{"n": h.Now, "size": s.units().Whole(side.Of(side.Blocks))})
	return h
}

// pulled gives the side that is held the number of whole blocks that brings its handle
// nearest to a place of the picture, or adds as many as a key says. All moves from taking
// hold to letting go are one step of the history.
func (s *Session) pulled(req Request) Response {
	all := s.handles(req)
	i := slices.IndexFunc(all, func(h Handle) bool { return h.Path == s.stretch.path && h.Side == s.stretch.side })
	if i < 0 {
		return Response{}
	}
	h := all[i]
	n := h.side.Blocks
	if req.Kind == "key" {
		n += sign(req.DX)
	} else {
		n += h.blocks(req.DX-h.X, req.DY-h.Y, len(all) == 2)
	}
	doc, ok := s.withBlocks(h.side, max(n, 1))
	if !ok {
		return Response{}
	}
	before := s.now
	next, err := s.planned(doc)
	if err != nil {
		return s.refuse(err)
	}
	if s.stretch.moved {
		s.show(next)
	} else {
		s.take(next)
		s.stretch.moved = true
	}
	path, _ := h.side.Edit(n)
	res := Response{Fragments: page.Fragments(s.input(), path), Values: s.changedValues(before.doc, "")}
	if sc, err := s.pictured(); err == nil {
		res.Scene = s.steadied(sc, shape(req)).Encode()
	}
	return s.common(res)
}

// blocks is how many blocks more in each panel take the handle by so many pixels. A group
// that is alone stays in the middle of the picture and grows to both sides.
func (h Handle) blocks(dx, dy float64, alone bool) int {
	x, y := h.perMM[0], h.perMM[1]
	mm := (dx*x + dy*y) / max(x*x+y*y, 1e-12)
	if alone {
		mm *= 2
	}
	const most = 1000 // a field has fewer
	one := h.side.Pitch.Millimetres() * float64(h.side.Panels)
	return int(math.Round(min(max(mm/one, -most), most)))
}

// withBlocks is the document with n blocks on a side of each panel, or as near to that as
// it may have; false where it is as it was.
func (s *Session) withBlocks(side engine.Side, n int) (design.Document, bool) {
	for ; n != side.Blocks; n += sign(float64(side.Blocks - n)) {
		path, value := side.Edit(n)
		if doc, err := design.Set(s.now.doc, path, value, s.units()); err == nil {
			return doc, true
		}
	}
	return s.now.doc, false
}
