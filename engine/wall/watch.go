package wall

import (
	"math"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/words"
)

// Limits of hanging. Common practice, no source.
const (
	oneStudKg   = 15.0 // that may hang on a lone stud
	leastTipDeg = 10.0 // of a stand
	published   = "ANSI/AWC NDS-2018; wall board by AWC TR-12, from memory; load factor: common practice"
)

// hold is what is to be said of what holds the panels: a stand, or the wall.
func (h Hanging) hold() []check.WatchOut {
	if len(h.Built.Panels) == 0 {
		return nil
	}
	all := h.shakes()
	if h.Means == Stand {
		return append(all, h.tips()...)
	}
	all = append(append(all, h.lock()...), h.bowed()...)
	switch h.Means {
	case BoardAlone:
		return append(all, h.boardAlone())
	case Studs:
		all = append(all, h.onStuds()...)
	case RatedValue:
		all = append(all, h.rated())
	default:
		return append(all, h.notChecked())
	}
	return append(all, h.loadFactor()...)
}

// shakes asks for a professional where the ground may shake: nothing here counts that.
func (h Hung) shakes() []check.WatchOut {
	if !h.Seismic || h.Looked {
		return nil
	}
	return []check.WatchOut{h.stop("wall/seismic", check.Hang, professionalField, check.CommonPractice, nil)}
}

// professional is who has looked, as somebody has written it down. It opens nothing but
// what asks for them.
func professional(asked design.Asked, revision string) []check.WatchOut {
	if !asked.Looked() {
		return nil
	}
	w := check.WatchOut{
		Code: "wall/professional", Level: check.Caution, Gate: check.Hang, Field: professionalField, Source: check.CommonPractice,
		Args: words.Args{"name": asked.Professional, "licence": asked.Licence, "day": asked.LookedOn, "looked": asked.LookedAt, "revision": asked.LookedFor},
	}
	if !asked.LookedAtThis(revision) {
		w.Code = "wall/professional-old"
	}
	return []check.WatchOut{w}
}

// wallField is the path of a field of the group's wall.
func (h Hung) wallField(name string) string { return h.wallPath() + "." + name }

// stop is a Stop that only evidence clears.
func (h Hung) stop(code string, gate check.Gate, field, source string, args words.Args) check.WatchOut {
	return check.WatchOut{
		Code: code, Level: check.Stop, Gate: gate, Evidence: true, Args: args, Field: field, Source: source,
	}
}

func (h Hung) notChecked() check.WatchOut {
	code, field := "wall/not-checked", h.wallField("fixing.ratedShear")
	switch {
	case h.Wall.Kind == unknownWall:
		code, field = "wall/not-known", h.wallField("kind") // no value counts for a wall that nobody knows
	case h.Wall.Kind == noFixingWall:
		code, field = "wall/no-fixing", h.Path+".stand.baseDepth"
	case h.NothingMayGoIn():
		field = h.wallField("fixing.kind")
	}
	return h.stop(code, check.Hang, field, check.CommonPractice,
		words.Args{"wall": words.Key("choice/" + h.Wall.Kind)})
}

// boardAlone asks for studs where the wall has some, and for a rated value.
func (h Hung) boardAlone() check.WatchOut {
	field := "fixing.ratedShear"
	if h.Wall.Kind == timberStuds {
		field = "studFirst"
	}
	return h.stop("wall/board-alone", check.Offer, h.wallField(field), check.CommonPractice, nil)
}

// lock asks for what keeps a hooked panel from being lifted off.
func (h Hung) lock() []check.WatchOut {
	if h.Design.Cleat.Lock != noLock {
		return nil
	}
	w := h.stop("wall/no-lock", check.Hang, h.Path+".cleat.lock", check.CommonPractice, nil)
	w.Fix = &check.Fix{Path: w.Field, Value: "screw"}
	return []check.WatchOut{w}
}

// loadFactor says that less than four times the load is counted and why, or that
// four times is, since nobody has said why less would do.
func (h Hanging) loadFactor() []check.WatchOut {
	typed := h.Wall.Fixing.LoadFactor
	if typed >= usualFactor {
		return nil
	}
	w := check.WatchOut{
		Code: "wall/low-factor", Level: check.Caution, Gate: check.Hang, Source: check.CommonPractice,
		Args:  words.Args{"factor": shown(h.Factor), "usual": int(usualFactor), "reason": h.Wall.Fixing.Reason},
		Field: h.wallField("fixing.loadFactor"),
	}
	if !filled(h.Wall.Fixing.Reason) {
		w.Code, w.Level = "wall/factor-unsaid", check.Note
		w.Args = words.Args{"typed": shown(typed), "usual": int(usualFactor)}
		w.Field = h.wallField("fixing.reason")
	}
	return []check.WatchOut{w}
}

// onStuds is a wall of board on timber studs, held by wood screws whose strength
// the published rules know.
func (h Hanging) onStuds() []check.WatchOut {
	var all []check.WatchOut
	if h.FewestStuds() < wantedStuds {
		all = append(all, h.fewStuds())
	}
	if h.FewestStuds() == 0 {
		return all
	}
	s, ok := h.Worst()
	if !ok {
		return append(all, h.notChecked())
	}
	return append(all, h.counted(s))
}

// fewStuds asks for two studs behind every strip. A light panel may hang on one,
// none may hang on no stud.
func (h Hanging) fewStuds() check.WatchOut {
	w := h.stop("wall/one-stud", check.Hang, h.wallField("rail"), check.CommonPractice, words.Args{"mass": words.Kg(h.Kg())})
	if h.Kg() <= oneStudKg && h.FewestStuds() > 0 {
		w.Level, w.Evidence = check.Caution, false
	}
	w.Fix = h.toTwoStuds()
	return w
}

// counted says how many screws hold, or that the most that fit do not.
func (h Hanging) counted(s Strip) check.WatchOut {
	args := words.Args{
		"count": s.Screws(), "gauge": s.Gauge, "long": length.MM(int64(s.ScrewMM)), "each": s.AStud,
		"use":  words.Percent(math.Ceil(100*s.MostUse() - dustOfFloats)),
		"high": tenths(s.HeightM * millimetresInM).CeilMM(), "factor": shown(h.Factor),
		"board": tenths(h.BoardMM), "studs": len(s.StudsM),
	}
	if s.Enough() {
		return check.WatchOut{
			Code: "wall/screws", Level: check.Caution, Gate: check.Hang, Args: args,
			Field: h.wallField("fixing.diameter"), Source: published,
		}
	}
	w := h.stop("wall/overloaded", check.Hang, h.wallField("fixing.diameter"), published, args)
	w.Fix = h.toHold()
	return w
}

// rated is any other base, by what the fixing's maker gives for it.
func (h Hanging) rated() check.WatchOut {
	most, _ := h.MostRated()
	args := words.Args{
		"count": most.Count, "use": words.Percent(math.Ceil(100*most.Use - dustOfFloats)),
		"what": h.Wall.Fixing.What, "factor": shown(h.Factor), "step": metres(h.ratedStepM()),
	}
	if most.Use > 1 {
		return h.stop("wall/rated-overloaded", check.Hang, h.wallField("fixing.ratedShear"), check.CommonPractice, args)
	}
	return check.WatchOut{
		Code: "wall/rated", Level: check.Caution, Gate: check.Hang, Args: args,
		Field: h.wallField("fixing.ratedShear"), Source: check.CommonPractice,
	}
}

// shown is a factor without a nought behind its point.
func shown(factor float64) any {
	if factor == math.Trunc(factor) {
		return int(factor)
	}
	return factor
}

// tips is what is to be said of a stand that falls too soon.
func (h Hung) tips() []check.WatchOut {
	t := h.Tipping()
	if t.Deg >= leastTipDeg {
		return nil
	}
	side, field := words.Key("wall/forwards"), ".stand.toeAhead"
	if t.Backwards {
		side, field = "wall/backwards", ".stand.baseDepth"
	}
	return []check.WatchOut{h.stop("wall/stand-tips", check.Offer, h.Path+field, check.CommonPractice, words.Args{
		"angle": words.Degrees(math.Floor(t.Deg)), "limit": words.Degrees(leastTipDeg), "more": t.More, "side": side,
	})}
}

// cells asks for enough safe places for the screws of every panel.
func (h Hanging) cells() []check.WatchOut {
	for _, half := range h.Halves {
		if half.Found {
			continue
		}
		return []check.WatchOut{h.stop("wall/too-few-cells", check.Hang, h.Path+".heights", published, words.Args{
			"need": half.Needed, "have": len(half.Row.Places),
			"long":  length.MM(int64(math.Round(half.Row.ScrewMM))),
			"short": length.MM(int64(half.ShortScrewMM())),
		})}
	}
	return nil
}

// walkway asks for care where people walk along the wall and cannot feel a panel
// with a stick: one that stands out more than 100 mm and begins between 680 and
// 2030 mm above the floor (4 in, 27 and 80 in in open rules for accessible rooms).
func (h Hung) walkway() []check.WatchOut {
	out, bottom := h.deep(), h.Built.Bottom
	if !h.Wall.Walkway || !h.Design.Stand.BaseDepth.IsZero() || out.Cmp(length.MM(walkOutMM)) <= 0 ||
		bottom.Cmp(length.MM(walkLowMM)) < 0 || bottom.Cmp(length.MM(walkHighMM)) > 0 {
		return nil
	}
	return []check.WatchOut{{
		Code: "wall/walkway", Level: check.Caution, Field: h.Path + ".place.height", Source: check.CommonPractice,
		Args: words.Args{"out": out, "bottom": bottom, "low": length.MM(walkLowMM), "high": length.MM(walkHighMM)},
	}}
}

// Where answers about the building are typed.
const (
	fireField    = design.RecordPrefix + "asked.fire"
	devicesField = design.RecordPrefix + "asked.devices"

	professionalField = design.RecordPrefix + "asked.professional"
)

// allowed makes Cautions of Stops about safety devices and ways out, where somebody who
// answers for the building allows this very design to hang there.
func allowed(all []check.WatchOut, asked design.Asked, revision string) []check.WatchOut {
	for i, w := range all {
		if w.Code != safetyDevice {
			continue
		}
		all[i].Field = devicesField
		if filled(asked.Devices) && asked.DevicesFor == revision {
			w.Code, w.Level, w.Evidence, w.Field = "wall/safety-allowed", check.Caution, false, devicesField
			w.Args = words.Args{"kind": w.Args["kind"], "x": w.Args["x"], "answer": asked.Devices}
			all[i] = w
		}
	}
	return all
}

// fire asks for the class that the surface must have, until somebody has answered.
func fire(room design.Room, answer string) []check.WatchOut {
	if !room.Public {
		return nil
	}
	if filled(answer) {
		return []check.WatchOut{{
			Code: "wall/fire-answer", Level: check.Caution, Gate: check.Buy, Args: words.Args{"answer": answer},
			Field: fireField, Source: check.CommonPractice,
		}}
	}
	return []check.WatchOut{{
		Code: "wall/fire-question", Level: check.Caution, Gate: check.Buy, Pending: check.SignOff,
		Field: fireField, Source: check.CommonPractice,
	}}
}

// climate asks for more care at a damp or cold wall.
func climate(room design.Room) []check.WatchOut {
	if room.HumidityHigh <= dampPercent && room.TemperatureLow >= coldC {
		return nil
	}
	return []check.WatchOut{{
		Code: "wall/damp-or-cold", Level: check.Caution,
		Args:  words.Args{"humidity": words.Percent(room.HumidityHigh), "cold": words.Celsius(room.TemperatureLow)},
		Field: "room.humidityHigh", Source: check.CommonPractice,
	}}
}
