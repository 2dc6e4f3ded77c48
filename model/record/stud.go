package record

import "strings"

// StudOf returns the stud that a component states for one of its terminals, or
// for all of them.
func StudOf(on *Component, terminal string) Text {
	for _, p := range on.Posts {
		if p.Terminal == terminal && p.Stud.Is() {
			return p.Stud
		}
	}
	return on.Stud
}

// nominalStuds maps the ways to write a stud or ring size to one spelling. Inch
// and metric sizes that take the same ring share it.
//
// Source: hole pairs of DIN 46237 and inch practice, from memory, unverified:
// #8 and M4 4.3 mm, #10 and M5 5.3 mm, 1/4 in 6.5 and M6 6.4 mm, 5/16 in and M8
// 8.4 mm, 3/8 in and M10 10.5 mm.
var nominalStuds = map[string]string{
	"#6": "#6", "3.7mm": "#6", "m3.5": "#6", "3.5mm": "#6",
	"#8": "M4", "m4": "M4", "4mm": "M4", "4.3mm": "M4",
	"#10": "M5", "m5": "M5", "5mm": "M5", "5.3mm": "M5", "3/16in": "M5",
	"1/4in": "M6", "1/4": "M6", "m6": "M6", "6mm": "M6", "6.4mm": "M6", "6.5mm": "M6",
	"5/16in": "M8", "5/16": "M8", "m8": "M8", "8mm": "M8", "8.4mm": "M8",
	"3/8in": "M10", "3/8": "M10", "m10": "M10", "10mm": "M10", "10.5mm": "M10",
	"1/2in": "M12", "1/2": "M12", "m12": "M12", "12mm": "M12", "13mm": "M12",
}

// NominalStud returns the one spelling of a stud or ring size.
func NominalStud(text string) (string, bool) {
	key := strings.ToLower(strings.ReplaceAll(text, " ", ""))
	key = strings.TrimSuffix(strings.ReplaceAll(key, `"`, "in"), "stud")
	size, ok := nominalStuds[key]
	return size, ok
}

// studs checks that an end and the component it lands on do not name different
// studs: whichever is wrong, the ring may not fit.
func (d *decoder) studs(c *Conductor) {
	for _, side := range []struct {
		at  Terminal
		end *End
	}{{c.From, c.Ends.From}, {c.To, c.Ends.To}} {
		on := d.r.components[side.at.Component]
		if on == nil || side.end == nil {
			continue
		}
		given, stated := side.end.Stud, StudOf(on, side.at.Name)
		if given.V == stated.V {
			continue
		}
		own, known := NominalStud(given.V)
		other, alsoKnown := NominalStud(stated.V)
		if known && alsoKnown && own != other {
			d.faultIn(given.At(), "the stud is %s here and %s at %s in line %d; look which it is", given.V, stated.V, on.Path, stated.At().Start.Line)
		}
	}
}
