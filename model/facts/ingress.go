package facts

import (
	"regexp"
	"strings"

	"driploop/model/record"
)

// Ingress is what an IP code promises. A code may carry several water digits
// (IP66/IP67): from 7 on they are tests of their own, so that IP67 alone says
// nothing of jets and IP66 nothing of immersion.
//
// Source: IEC 60529, second characteristic numeral; from memory, unverified.
type Ingress struct {
	IP *string `json:"ip,omitempty"`
	// Solids is the first digit, absent where it is X.
	Solids *int `json:"ip_solids,omitempty"`
	// Drips, Splash, Jets and Immersion tell what water it is proven against:
	// second digit from 1, from 4, of 5, 6 or 9, and of 7 or 8.
	Drips     *bool `json:"ip_drips,omitempty"`
	Splash    *bool `json:"ip_splash,omitempty"`
	Jets      *bool `json:"ip_jets,omitempty"`
	Immersion *bool `json:"ip_immersion,omitempty"`
}

// ipCode finds the codes in a marking such as "IP66/IP67" or "IPX4".
var ipCode = regexp.MustCompile(`(?i)(?:IP)?([0-6X])([0-9X])`)

// promise is what a marking promises.
type promise struct {
	solids                         int
	drips, splash, jets, immersion bool
	saysSolids, saysWater          bool
}

func readMarking(text string) promise {
	water, solids := "", ""
	for _, code := range ipCode.FindAllStringSubmatch(text, -1) {
		solids, water = code[1], water+code[2]
	}
	p := promise{
		drips: strings.ContainsAny(water, "123456789"), splash: strings.ContainsAny(water, "456789"),
		jets: strings.ContainsAny(water, "569"), immersion: strings.ContainsAny(water, "78"),
		saysWater: strings.Trim(water, "xX") != "",
	}
	if solids != "" && !strings.EqualFold(solids, "X") {
		p.solids, p.saysSolids = int(solids[0]-'0'), true
	}
	return p
}

// ingress sets what a marking promises, given by the path of what is marked and
// the name of the entry there.
func (b *Builder) ingress(s *Subject, f *Ingress, marking *record.Text, of, entry string) {
	putOf(s, "ip", &f.IP, marking, of, entry)
	if !marking.Is() {
		for _, fact := range [...]string{"ip_solids", "ip_drips", "ip_splash", "ip_jets", "ip_immersion"} {
			s.lacks(fact, of, entry)
		}
		return
	}
	says := b.markings.of(marking.V, readMarking)
	gap := reason{of, entry, "a digit given as X says nothing"}
	if says.saysSolids {
		f.Solids = &says.solids
	} else {
		s.Open.add("ip_solids", b.reason(gap))
	}
	if says.saysWater {
		f.Drips, f.Splash, f.Jets, f.Immersion = s.flag(says.drips), s.flag(says.splash), s.flag(says.jets), s.flag(says.immersion)
		return
	}
	for _, fact := range [...]string{"ip_drips", "ip_splash", "ip_jets", "ip_immersion"} {
		s.Open.add(fact, b.reason(gap))
	}
}
