package session

import (
	"cmp"
	"errors"
	"slices"
	"strconv"
	"strings"

	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/page"
	"blockfield/engine/wall"
)

// grip is a group of panels that somebody moves on the drawing of its wall.
type grip struct {
	path         string        // of the group that is held, or was held last
	held         bool          //
	left, bottom length.Length // where it was taken up
	right, down  float64       // how far it was moved since, mm
	moved        bool          // the history has where it was
}

// place moves a group on the drawing of its wall. Kinds: "grab" takes up what lies at
// a place of the drawing, in mm from the upper left corner of the wall; "move" moves
// it on by mm; "key" moves the group that was held last, or else the first, by steps,
// finely with a factor below 1; "drop" lets go and shows the picture. Where it comes
// to lie the wall decides.
func (s *Session) place(req Request) Response {
	switch req.Kind {
	case "grab":
		s.grab(req)
		return Response{}
	case "move":
		if !s.grip.held {
			return Response{}
		}
		s.grip.right += req.DX
		s.grip.down += req.DY
		return s.dragged()
	case "key":
		return s.stepped(req)
	case "drop":
		s.grip = grip{path: s.grip.path}
		return s.common(Response{Scene: s.scene()})
	default:
		return s.refuse(errors.New("internal error: no such move: " + strconv.Quote(req.Kind)))
	}
}

// grab takes up the group at a place of a wall.
func (s *Session) grab(req Request) {
	s.grip = grip{}
	for _, h := range s.hangings(req.Path) {
		top := h.Wall.Height.Sub(h.Built.Bottom).Sub(h.Built.TotalHeight).Millimetres()
		left := h.Built.Left.Millimetres()
		if req.DX >= left && req.DX <= left+h.Built.TotalWidth.Millimetres() &&
			req.DY >= top && req.DY <= top+h.Built.TotalHeight.Millimetres() {
			s.grip = grip{path: h.Path, held: true, left: h.Built.Left, bottom: h.Built.Bottom}
		}
	}
}

// hangings are the groups on the wall at a path.
func (s *Session) hangings(wallPath string) []wall.Hanging {
	return slices.DeleteFunc(slices.Clone(s.now.plan.Hangings), func(h wall.Hanging) bool {
		return !strings.HasPrefix(h.Path, wallPath+".")
	})
}

// stepped moves a group by one step of a key.
func (s *Session) stepped(req Request) Response {
	all := s.hangings(req.Path)
	if len(all) == 0 {
		return Response{}
	}
	h := all[max(0, slices.IndexFunc(all, func(h wall.Hanging) bool { return h.Path == s.grip.path }))]
	by, fine := wall.KeySteps(s.units().Bare())
	if req.Factor < 1 {
		by = fine
	}
	s.grip = grip{path: h.Path}
	left, bottom := h.Onto(h.Built.Left.Add(by.Times(sign(req.DX))), h.Built.Bottom.Sub(by.Times(sign(req.DY))))
	res := s.placed(h, left, bottom)
	s.grip.moved = false
	if res.Text != "" {
		res.Scene = s.scene()
	}
	return res
}

func sign(x float64) int { return cmp.Compare(x, 0) }

// dragged brings the held group to where it was moved, or to a place that suits it
// near there.
func (s *Session) dragged() Response {
	i := slices.IndexFunc(s.now.plan.Hangings, func(h wall.Hanging) bool { return h.Path == s.grip.path })
	if i < 0 {
		return Response{}
	}
	h := s.now.plan.Hangings[i]
	left, bottom := h.Snap(s.grip.left.Add(millimetres(s.grip.right)), s.grip.bottom.Sub(millimetres(s.grip.down)))
	return s.placed(h, left, bottom)
}

// placed gives a group its left and lower edge. All moves from grabbing to letting go
// are one step of the history.
func (s *Session) placed(h wall.Hanging, left, bottom length.Length) Response {
	before, doc := s.now, s.now.doc
	for _, edit := range []Value{
		{h.Path + ".place.left", left.String()}, {h.Path + ".place.height", h.PlaceHeight(bottom).String()},
	} {
		var err error
		if doc, err = design.Set(doc, edit.Path, edit.Value, s.units()); err != nil {
			return s.refuse(err)
		}
	}
	next, err := s.planned(doc)
	if err != nil {
		return s.refuse(err)
	}
	switch {
	case next.plan.Revision == s.now.plan.Revision:
		return Response{}
	case s.grip.moved:
		s.show(next)
	default:
		s.take(next)
		s.grip.moved = true
	}
	return s.common(Response{
		Fragments: page.Fragments(s.input(), h.Path+".place.left"),
		Values:    s.changedValues(before.doc, ""),
	})
}

// millimetres is how far something was moved, which nobody does beyond a hundred metres.
func millimetres(mm float64) length.Length {
	const micrometres, most = 1000, 100_000
	return length.Micrometres(int64(min(max(mm, -most), most) * micrometres))
}
