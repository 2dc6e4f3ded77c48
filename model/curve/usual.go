package curve

// UsualRatings are the ratings of fuses and breakers that are usual on boats, in
// amperes, least first: common practice, no source.
func UsualRatings() []float64 {
	return []float64{1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200, 225, 250, 300, 350, 400, 500}
}
