package design

import "blockfield/engine/length"

// Default is the design that every visitor meets first. Its figures are
// invented; it fires no watch-out above a Caution.
func Default() Document {
	d := defaultDesign()
	return Document{
		Format: Format, Version: Version,
		Design: d, Assumed: Assumable(d),
		View: View{
			Units: length.Metric, Language: "en", Reading: "client",
			Lamp:   Lamp{Azimuth: 315, Elevation: 35, Warmth: 3000},
			Camera: Camera{Zoom: 1, Distance: length.MM(0)}, WallPaint: WallPaints()[0],
		},
	}
}

func defaultDesign() Design {
	mm, um := length.MM, length.Micrometres
	return Design{
		Title: "Panel for a living room",
		Room: Room{
			Length: mm(4500), Width: mm(3500), Height: mm(2500),
			Use: "listening", Goals: []string{"echo off one wall", "look"},
			TemperatureLow: 18, TemperatureHigh: 23, HumidityLow: 40, HumidityHigh: 55,
		},
		Walls: []Wall{{
			Name: "Wall", Kind: "board on timber studs",
			Width: mm(3500), Height: mm(2500), StudFirst: mm(300), StudStep: mm(600), Studs: []length.Length{},
			ListenerDistance: mm(2000), EarHeight: mm(1150),
			Fixing:    Fixing{Kind: "automatic", LoadFactor: 4},
			Obstacles: []Obstacle{},
			Groups: []Group{{
				Name: "Panel", PanelsWide: 1, PanelsHigh: 1,
				Width: mm(1200), Height: mm(800),
				PanelGap: mm(3),
				Place:    Place{Left: mm(1130), Edge: "bottom", Height: mm(900)},
				Block:    Block{Size: mm(36), Slack: um(200), Section: "40 × 40 sawn, planed to 36 × 36"},
				Heights:  []length.Length{mm(26), mm(42), mm(64), mm(92)},
				Pattern:  Pattern{Kind: "shuffled", Order: 23, Seed: 1, Clump: 2},
				Wood:     "poplar",
				Backer:   Backer{Sheet: "birch ply", Thickness: mm(12)},
				Frame:    Frame{Joint: "mitred", Wood: "poplar", Thickness: mm(20), Board: mm(130), Gap: mm(3), Reveal: mm(5)},
				Finish:   Finish{Kind: "waterborne varnish", Coats: 2, FrameCoats: 2, Colour: Clear, FrameColour: Clear, When: FinishAfter},
				Cleat:    Cleat{Thickness: mm(18), Bevel: 45, Lock: "screw"},
			}},
		}},
		Bench: Bench{
			StickLength: mm(2400), BoardLength: mm(2400), Stock: []Stock{}, Handling: CheaperPlan,
			BackerOversize: mm(10), BackerGrain: AnyGrain, Trim: TrimBacker, SawDepth: mm(65), Kerf: um(2800), EndTrim: mm(20), HoldTail: mm(150), Carrier: true,
			Defects: 10, Spares: 3, SparesLeast: 2, StockMoisture: 9, GlueOpenMinutes: 8, Temperature: 18, Gang: 1,
		},
		Work:  Work{Crew: 2, Lifting: Lifting{Method: ByHand}, Survey: true, Delivered: true, Hung: true, DistanceKm: 20, SpeedFactor: 1},
		WayIn: WayIn{DoorWidth: mm(762), DoorHeight: mm(1981), Corridor: mm(900)},
		Money: Money{Tax: 20, Extras: []Extra{}},
	}
}

// newEntryOf is what a new part of a list of this design starts as.
func newEntryOf(d Design, list string) any {
	switch list {
	case "design.bench.stock":
		return sticksAlike(d)
	case "design.bench.sheets":
		return sheetAlike(d)
	case "design.room.surfaces":
		return newSurface(d.Room)
	default:
		return newEntry(list)
	}
}

// sticksAlike is one stick more of those that a design is cut from.
func sticksAlike(d Design) Stock {
	g := d.Walls[0].Groups[0]
	return Stock{Wood: g.Wood, Width: g.Block.Size, Thickness: g.Block.Size, Length: d.Bench.StickLength, Count: 1, Owned: true}
}

// sheetAlike is a rest of the board that the backers of a design are cut from. Its size
// is that of a board as it is often kept; whoever has it measures it.
func sheetAlike(d Design) SheetStock {
	b := d.Walls[0].Groups[0].Backer
	return SheetStock{Sheet: b.Sheet, Thickness: b.Thickness, Width: length.MM(600), Length: length.MM(1200), Count: 1}
}

// newEntry is what a new part of a list starts as, whether it is added by hand
// or a file leaves some of its fields out.
func newEntry(list string) any {
	switch list {
	case "design.room.surfaces":
		return newSurface(defaultDesign().Room)
	case "design.walls":
		return defaultDesign().Walls[0]
	case "design.walls[].groups":
		return defaultDesign().Walls[0].Groups[0]
	case "design.walls[].obstacles":
		return Obstacle{Kind: "other", Width: length.MM(100), Height: length.MM(100)}
	case "design.bench.stock":
		return sticksAlike(defaultDesign())
	case "design.bench.sheets":
		return sheetAlike(defaultDesign())
	case "design.money.extras":
		return Extra{}
	case "offer.taxes":
		return TaxPart{}
	case "offer.stages":
		return OfferedStage{}
	case "offer.others":
		return OfferedLook{Wood: Woods()[0]}
	case "looks":
		return Look{Design: defaultDesign()}
	default:
		panic("design: internal error: no new entry for " + list)
	}
}
