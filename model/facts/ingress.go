package facts

import (
	"regexp"
	"strings"

	"driploop/model/figure"
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

// ingress sets what a marking promises, given by the path of what is marked and
// the name of the entry there.
func ingress(s *Subject, f *Ingress, marking *record.Text, of, entry string) {
	putOf(s, "ip", &f.IP, marking, of, entry)
	if !marking.Is() {
		for _, fact := range []string{"ip_solids", "ip_drips", "ip_splash", "ip_jets", "ip_immersion"} {
			s.lacks(fact, of, entry)
		}
		return
	}
	water, solids := "", ""
	for _, code := range ipCode.FindAllStringSubmatch(marking.V, -1) {
		solids, water = code[1], water+code[2]
	}
	gap := figure.Gap{Field: of + "." + entry, Why: "a digit given as X says nothing"}
	if solids != "" && !strings.EqualFold(solids, "X") {
		f.Solids = ptr(int(solids[0] - '0'))
	} else {
		s.open("ip_solids", gap)
	}
	for _, test := range []struct {
		fact   string
		to     **bool
		proven string
	}{
		{"ip_drips", &f.Drips, "123456789"},
		{"ip_splash", &f.Splash, "456789"},
		{"ip_jets", &f.Jets, "569"},
		{"ip_immersion", &f.Immersion, "78"},
	} {
		if strings.Trim(water, "xX") == "" {
			s.open(test.fact, gap)
			continue
		}
		*test.to = ptr(strings.ContainsAny(water, test.proven))
	}
}
