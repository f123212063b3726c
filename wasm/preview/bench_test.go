//go:build !js

package main_test

import (
	"testing"

	"blockfield/engine/scene"
)

// BenchmarkDrag reports how many pictures a second a drag shows and how long
// the full picture takes to stand after it, at 800 × 600 on software graphics.
func BenchmarkDrag(b *testing.B) {
	tr := newTrial(b, map[string]scene.Scene{"scene": trialScene(trialPanel(33, 22))})
	value[any](b, tr, "trial.ready()")
	first := value[struct{ Ms float64 }](b, tr, "trial.scene('scene')")
	value[any](b, tr, "trial.resize('large')")
	for b.Loop() {
		before := processorTime(b, tr)
		got := value[struct {
			Events, Coarse int
			SettleMs       float64
		}](b, tr, "trial.drag(3)")
		// The finished picture at the end is in it too, as in a real drag.
		b.ReportMetric(float64((processorTime(b, tr)-before).Milliseconds())/float64(got.Coarse), "processor-ms/picture")
		b.ReportMetric(float64(got.Coarse)/3, "pictures/s")
		b.ReportMetric(float64(got.Events)/3, "events/s")
		b.ReportMetric(got.SettleMs, "settle-ms")
	}
	b.ReportMetric(first.Ms, "first-ms")
}
