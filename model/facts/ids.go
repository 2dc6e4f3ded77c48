package facts

import "strconv"

// segmentID names a segment of a conductor's route by its place in it.
func segmentID(conductor string, i int) string { return conductor + "[" + strconv.Itoa(i) + "]" }

// listID names an entry of a list by its place in it, padded so that text order
// is list order.
func listID(i int) string {
	n := strconv.Itoa(i)
	for len(n) < 4 {
		n = "0" + n
	}
	return n
}
