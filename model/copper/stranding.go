package copper

import "sync"

// allowance is a factor on the resistance of solid plain wire, as a range.
type allowance struct {
	least, greatest float64
	source          string
}

// layOf returns what stranding adds to the resistance of a gauge: the strands
// are longer than the conductor. What is not recorded may be anything from
// solid to flexible.
//
// Source: published guide (secondary) class 2 ×1.02 to 1.04, classes 5 and 6
// ×1.05 to 1.08; ASTM B8 concentric lay +2 % and rope lay +3 to 7 % (from
// memory, unverified). UL 1426 types 2 and 3 are read as concentric or rope, and
// as rope or flexible.
func layOf(class string) allowance {
	switch class {
	case "solid":
		return allowance{1, 1, "solid: none"}
	case "class-2":
		return allowance{1.02, 1.04, "class 2: 1.02 to 1.04, published guide, secondary"}
	case "class-5", "class-6":
		return allowance{1.05, 1.08, "classes 5 and 6: 1.05 to 1.08, published guide, secondary"}
	case "type-2":
		return allowance{1.02, 1.07, "type 2, concentric or rope lay: 1.02 to 1.07, from memory, unverified"}
	case "type-3":
		return allowance{1.03, 1.08, "type 3, rope lay or flexible: 1.03 to 1.08, from memory, unverified"}
	}
	return allowance{1, 1.08, "stranding not recorded: 1 (solid) to 1.08 (class 5), secondary"}
}

// tinOf returns what a tin coat adds to the resistance of a gauge.
//
// Source: greatest 6 %, from published pairs of coated and plain strands; least
// 0.5 %, the smallest gap between plain and tinned in IEC 60228 (class 2,
// 10 mm²: 1.84 against 1.83). Computed.
func tinOf(tinned *bool) allowance {
	switch {
	case tinned == nil:
		return allowance{1, 1.06, "tin not recorded: 1 (plain) to 1.06 (tinned), computed from published pairs"}
	case *tinned:
		return allowance{1.005, 1.06, "tinned: 1.005 to 1.06, computed from published pairs"}
	}
	return allowance{1, 1, "plain: none"}
}

const sourceIEC = "IEC 60228:2004, greatest resistance at 20 °C; secondary, two copies agree"

var iec60228 = sync.OnceValue(func() table { return load("iec60228.csv") })

// iecNames tells what a person calls the columns of the table of IEC 60228.
var iecNames = map[string]string{
	"class1_plain":  "class 1, plain",
	"class1_tinned": "class 1, tinned",
	"class2_plain":  "class 2, plain",
	"class2_tinned": "class 2, tinned",
	"class5_plain":  "classes 5 and 6, plain",
	"class5_tinned": "classes 5 and 6, tinned",
}

// iecColumns returns the columns that a conductor may fall under. The types of
// UL 1426 are no classes of IEC 60228 and may be any of the stranded ones.
func iecColumns(class string, tinned *bool) []string {
	var columns []string
	for _, c := range iecClasses(class) {
		if tinned == nil || !*tinned {
			columns = append(columns, c+"_plain")
		}
		if tinned == nil || *tinned {
			columns = append(columns, c+"_tinned")
		}
	}
	return columns
}

func iecClasses(class string) []string {
	switch class {
	case "solid":
		return []string{"class1"}
	case "class-2":
		return []string{"class2"}
	case "class-5", "class-6":
		return []string{"class5"}
	case "type-2", "type-3":
		return []string{"class2", "class5"}
	}
	return []string{"class1", "class2", "class5"}
}
