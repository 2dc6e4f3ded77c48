package copper

import (
	"testing"

	"driploop/model/quantity"
)

func BenchmarkOf(b *testing.B) {
	spec := Spec{Size: quantity.WireSize{System: quantity.AWG, Gauge: 6}, Class: "type-3", Tinned: yes()}
	b.ReportAllocs()
	for b.Loop() {
		_, _ = Of(spec)
	}
}

func BenchmarkAllowable(b *testing.B) {
	size := quantity.WireSize{System: quantity.AWG, Gauge: 6}
	hot := 55.0
	b.ReportAllocs()
	for b.Loop() {
		_ = Allowable(size, 105, true, &hot)
	}
}
