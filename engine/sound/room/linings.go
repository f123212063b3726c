package room

import (
	"blockfield/engine/design"
)

// octaves are the bands of room acoustics, 125 Hz to 4 kHz.
const octaves = 6

// alpha holds absorption coefficients, octave by octave.
type alpha [octaves]float64

// octaveHz returns the middle of an octave, counted from 0.
func octaveHz(i int) float64 { return 125 * float64(int(1)<<i) }

// middle returns the mean of 500 Hz and 1 kHz, by which rooms are compared.
func (a alpha) middle() float64 { return (a[2] + a[3]) / 2 }

// linings returns what surfaces of a room are made of, by their names in the
// design. The coefficients are rounded ones of common textbook tables, from
// memory.
func linings() map[string]alpha {
	return map[string]alpha{
		design.PlasterLining:   {0.01, 0.02, 0.02, 0.03, 0.04, 0.05},
		design.BrickLining:     {0.01, 0.01, 0.02, 0.02, 0.02, 0.03},
		design.ConcreteLining:  {0.01, 0.01, 0.015, 0.02, 0.02, 0.02},
		design.BoardLining:     {0.29, 0.10, 0.05, 0.04, 0.07, 0.09},
		design.GlassLining:     {0.35, 0.25, 0.18, 0.12, 0.07, 0.04},
		design.WoodLining:      {0.15, 0.11, 0.10, 0.07, 0.06, 0.07},
		design.CarpetLining:    {0.02, 0.06, 0.14, 0.37, 0.60, 0.65},
		design.CurtainLining:   {0.14, 0.35, 0.55, 0.72, 0.70, 0.65},
		design.SoftPanelLining: {0.20, 0.55, 0.90, 0.95, 0.95, 0.95},
		design.SeatsLining:     {0.20, 0.35, 0.55, 0.65, 0.60, 0.60},
	}
}
