package verdict

import "math"

// Beyond is how far the figures of a breach lie from their limits, as a share of
// the limit: the greatest over the quantities that have both. It is 0 where
// nothing can be measured.
func (v *Verdict) Beyond() float64 {
	far := 0.0
	for _, limit := range v.Limit {
		for _, f := range v.Figures {
			if f.Name != limit.Name || f.Text != "" || limit.Text != "" {
				continue
			}
			away := math.Abs(f.Quantity.Base - limit.Quantity.Base)
			if bound := math.Abs(limit.Quantity.Base); bound > 0 {
				away /= bound
			}
			far = max(far, away)
		}
	}
	return far
}
