package scene_test

import (
	"encoding/binary"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine/scene"
)

func TestDecodeInvertsEncode(t *testing.T) {
	one := defaultScene()
	many := sceneOf()
	for i := range scene.MaxPanels {
		p := barePanel(2, 3, 0.05, []float64{0, 0.04}, 0, 1, 1, 0, 1, 0)
		p.LeftM, p.Seed, p.Mitred = float64(i)*0.2, math.MaxUint64-uint64(i), i%2 == 0
		p.OutM, p.Bevel = float64(i)*0.3, float64(i-6)/6
		if i%3 == 0 {
			p.Cut = []scene.Cut{0, 1, 255, 7, 7, 32}
		}
		if i%4 == 0 {
			p.Woods, p.Second = []uint8{0, 1, 1, 0, 0, 1}, material(0.1, 0.2, 0.3)
		}
		many.Panels = append(many.Panels, p)
	}
	largest := sceneOf(barePanel(400, 100, 0.01, []float64{0.02}))
	for name, s := range map[string]scene.Scene{"default": one, "twelve panels": many, "largest field": largest} {
		require.NoError(t, s.Validate(), name)
		got, err := scene.Decode(s.Encode())
		require.NoError(t, err, name)
		assert.Equal(t, s, got, name)
	}
}

func TestDecodeRefusesEveryCut(t *testing.T) {
	b := sceneOf(barePanel(2, 2, 0.05, []float64{0.02, 0.04}, 0, 1, 1, 0)).Encode()
	for n := range b {
		_, err := scene.Decode(b[:n])
		require.Error(t, err, "first %d of %d bytes", n, len(b))
	}
	_, err := scene.Decode(append(b, 0))
	assert.ErrorContains(t, err, "1 bytes left over")
}

// TestDecodeRefusesHostileBytes changes bytes at places counted from the format
// in the package: 1 version, 5+4+4 numbers of 8 bytes, 1 flag, 1 count, then a
// panel.
func TestDecodeRefusesHostileBytes(t *testing.T) {
	const panels = 1 + 13*8 + 1
	const mitred = panels + 1 + 7*8
	const columns = mitred + 1 + 4*8
	const heights = columns + 4 + 2*8 + 8 + 3*17*8
	put16 := func(at int, v uint16) func([]byte) {
		return func(b []byte) { binary.LittleEndian.PutUint16(b[at:], v) }
	}
	for _, c := range []struct {
		name   string
		change func(b []byte)
		want   string
	}{
		{"newer version", func(b []byte) { b[0] = 9 }, "version 9"},
		{"no panels", func(b []byte) { b[panels] = 0 }, "left over"},
		{"more panels than bytes", func(b []byte) { b[panels] = 12 }, "12 panels"},
		{"too many panels", func(b []byte) { b[panels] = 255 }, "255 panels"},
		{"odd flag", func(b []byte) { b[mitred] = 7 }, "mitred"},
		{"too many columns", put16(columns, 65535), "65535"},
		{"more columns than levels", put16(columns, 400), "cut short"},
		{"no columns", put16(columns, 0), "cut short"},
		{"too many heights", put16(heights, 65535), "65535 heights"},
		{"level beyond the heights", func(b []byte) { b[len(b)-3] = 2 }, "levels[3]: got 2"},
		{"odd flag before the end", func(b []byte) { b[len(b)-2] = 2 }, "cut"},
		{"odd flag at the end", func(b []byte) { b[len(b)-1] = 2 }, "woods"},
		{"flag without what it promises", func(b []byte) { b[len(b)-1] = 1 }, "cut short"},
		{"wall of no number", func(b []byte) { binary.LittleEndian.PutUint64(b[1:], math.Float64bits(math.NaN())) }, "wall.width"},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := sceneOf(barePanel(2, 2, 0.05, []float64{0.02, 0.04}, 0, 1, 1, 0)).Encode()
			c.change(b)
			_, err := scene.Decode(b)
			assert.ErrorContains(t, err, c.want)
		})
	}
}

// FuzzDecode: what is accepted is valid and encodes to the same bytes.
func FuzzDecode(f *testing.F) {
	f.Add(defaultScene().Encode())
	f.Add(sceneOf(barePanel(2, 2, 0.05, []float64{0, 0.04}, 0, 1, 1, 0), barePanel(1, 1, 0.1, []float64{0.1})).Encode())
	f.Add([]byte{1})
	f.Fuzz(func(t *testing.T, b []byte) {
		s, err := scene.Decode(b)
		if err != nil {
			return
		}
		require.NoError(t, s.Validate())
		require.Equal(t, b, s.Encode())
	})
}
