package quantity

import (
	"math"
	"strconv"
)

// Quantity is a value with its unit. Base is the value in the base unit of its
// dimension; Value and Unit are as written. The zero Quantity has no dimension.
type Quantity struct {
	Dim   Dimension
	Base  float64
	Value float64
	Unit  string
}

// New returns a quantity of value in the unit symbol. It panics on an unknown
// symbol, which is a fault of the program, never of a record.
func New(value float64, symbol string) Quantity {
	u, ok := units[symbol]
	if !ok {
		panic("quantity: no unit " + symbol)
	}
	return u.of(value, symbol)
}

// of returns a quantity in the unit with its symbol.
func (u unit) of(value float64, symbol string) Quantity {
	return Quantity{Dim: u.dim, Base: Round(u.offset + u.factor*value), Value: value, Unit: symbol}
}

// In returns the value in another unit of the same dimension.
func (q Quantity) In(symbol string) float64 {
	if symbol == q.Unit {
		return q.Value
	}
	u := units[symbol]
	return Round((q.Base - u.offset) / u.factor)
}

// Round returns v to 12 significant digits, so that 7 in and 177.8 mm are the
// same number and a value at a limit compares as equal to it. (The physics
// behind any figure is far coarser.)
func Round(v float64) float64 {
	if math.IsInf(v, 0) || math.IsNaN(v) || v == math.Trunc(v) && math.Abs(v) < 1e12 {
		return v
	}
	if r, ok := rounded(v); ok {
		return r
	}
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 12, 64), 64)
	if err != nil {
		return v
	}
	return r
}
