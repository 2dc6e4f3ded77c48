package copper

import "driploop/model/quantity"

// UsualSizes are the sizes of boat cable that are usual in a system, smallest
// first: common practice, no source.
func UsualSizes(system quantity.WireSystem) []quantity.WireSize {
	var all []quantity.WireSize
	switch system {
	case quantity.MM2:
		for _, area := range []float64{0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120} {
			all = append(all, quantity.WireSize{System: system, MM2: area})
		}
	case quantity.AWG, quantity.SAE:
		for _, gauge := range []int{18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3} {
			all = append(all, quantity.WireSize{System: system, Gauge: gauge})
		}
	}
	return all
}
