package circuit

import (
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"driploop/model/record"
)

// needSpice skips without ngspice, and fails where the build server lacks it.
func needSpice(t *testing.T) {
	t.Helper()
	if _, err := exec.LookPath("ngspice"); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("ngspice is not installed; the build server needs it: apt-get install ngspice")
		}
		t.Skip("ngspice is not installed; install it to compare with an independent solver")
	}
}

// netlist writes one case of a record for ngspice. It reads the record by
// itself, apart from build.go: only the figures of single parts (resistance of
// a conductor, voltage and resistance of a battery) come from the analysis.
type netlist struct {
	r     *record.Record
	a     *Analysis
	text  strings.Builder
	nodes map[string]string
	zero  string // terminal that is node 0
	print []string
	names []string // what each print is: "V terminal" or "I conductor"
}

func (n *netlist) node(terminal string) string {
	comp, _, _ := strings.Cut(terminal, ".")
	if c := n.r.Component(comp); c.Kind.V == "busbar" || c.Kind.V == "ground" {
		terminal = comp
	}
	if terminal == n.zero {
		return "0"
	}
	if n.nodes[terminal] == "" {
		n.nodes[terminal] = fmt.Sprintf("n%d", len(n.nodes)+1)
	}
	return n.nodes[terminal]
}

func (n *netlist) add(format string, args ...any) { fmt.Fprintf(&n.text, format+"\n", args...) }

// joined adds what lies between two terminals: a resistor, or a source of 0 V
// where no resistance is recorded.
func (n *netlist) joined(name, a, b string, ohms record.Measure) {
	if ohms.Is() && ohms.V.Base > 0 {
		n.add("R%s %s %s %.17g", name, n.node(a), n.node(b), ohms.V.Base/1000)
		return
	}
	n.add("V%s %s %s 0", name, n.node(a), n.node(b))
}

// situation is what a case is about: what draws, and what the sources do.
type situation struct {
	loads    []string
	lowCell  float64            // share of the open-circuit voltage left in a low battery
	charging map[string]float64 // current that each charging source gives
	position string
	stalled  string // load with its rotor locked
}

func writeNetlist(r *record.Record, a *Analysis, s situation) *netlist {
	n := &netlist{r: r, a: a, nodes: map[string]string{}}
	for i, c := range r.Components {
		id := c.ID
		k := strconv.Itoa(i)
		switch c.Kind.V {
		case "battery":
			if n.zero == "" {
				n.zero = id + ".neg"
			}
			n.add("VE%s e%s %s %.17g", k, k, n.node(id+".neg"), a.Batteries[id].OpenV.Value*s.lowCell)
			n.add("RE%s e%s %s %.17g", k, k, n.node(id+".pos"), a.Batteries[id].ResistanceHigh.Value/1000)
		case "alternator", "charger", "solar", "generator":
			n.charger(k, c, s.charging)
		case "fuse", "breaker":
			n.joined("D"+k, id+".line", id+".load", c.Resistance)
		case "switch", "connector":
			n.joined("S"+k, id+".in", id+".out", c.Resistance)
		case "controller", "relay":
			for j, l := range c.Links {
				if !l.When.Is() || l.When.V == s.position {
					n.joined(fmt.Sprintf("L%s_%d", k, j), id+"."+l.Between[0], id+"."+l.Between[1], l.Resistance)
				}
			}
		}
		if slices.Contains(s.loads, id) {
			n.load(k, c, s.stalled == id)
		}
	}
	for i, c := range r.Conductors {
		// A source of 0 V in series has the current as an unknown of its own, which
		// keeps more digits than the difference of two voltages near 12 V.
		n.add("RW%d %s w%d %.17g", i, n.node(c.From.String()), i, a.Conductors[c.ID].RHot.Value/1000)
		n.add("VW%d w%d %s 0", i, i, n.node(c.To.String()))
		n.print = append(n.print, fmt.Sprintf("i(vw%d)", i))
		n.names = append(n.names, "I "+c.ID)
		for _, t := range []string{c.From.String(), c.To.String()} {
			if node := n.node(t); node != "0" {
				n.print = append(n.print, "v("+node+")")
				n.names = append(n.names, "V "+t)
			}
		}
	}
	return n
}

// charger adds a charging source in the state that its current in our solution
// shows: blocked, at its limit, or holding its voltage. settled tells from the
// voltages of ngspice whether that state is the right one; only one choice for
// all sources together passes there. (A source with both bends in one expression
// keeps ngspice from converging.)
func (n *netlist) charger(k string, c *record.Component, charging map[string]float64) {
	amps, at := charging[c.ID]
	p, q := n.node(c.ID+".pos"), n.node(c.ID+".neg")
	switch limit := c.Output.V.Base; {
	case !at || amps <= 0:
	case amps >= limit:
		n.add("IC%s %s %s %.17g", k, q, p, limit)
	default:
		n.add("VC%s c%s %s %.17g", k, k, q, c.Voltage.V.Base)
		n.add("RC%s c%s %s %.17g", k, k, p, c.Resistance.V.Base/1000)
	}
}

// settled checks the state of each charging source against ngspice's voltages.
func (n *netlist) settled(t require.TestingT, charging, spice map[string]float64, text string) {
	for _, c := range n.r.Components {
		amps, at := charging[c.ID]
		if !at {
			continue
		}
		calls := (c.Voltage.V.Base - spice["V "+c.ID+".pos"] + spice["V "+c.ID+".neg"]) / (c.Resistance.V.Base / 1000)
		gives := min(c.Output.V.Base, max(0, calls))
		require.InDelta(t, gives, amps, 1e-5*(1+math.Abs(calls)), "%s: its voltage calls for %g A\n%s", c.ID, calls, text)
	}
}

func (n *netlist) load(k string, c *record.Component, stalled bool) {
	p, q := n.node(c.ID+".pos"), n.node(c.ID+".neg")
	switch {
	case stalled:
		n.add("IL%s %s %s %.17g", k, p, q, c.Stall.V.Base)
	case c.LoadOhms.Is():
		n.add("RL%s %s %s %.17g", k, p, q, c.LoadOhms.V.Base/1000)
	case c.Power.Is():
		// Of two working points ngspice may find the lower, which no load rests at,
		// or none at all; under 6 V the load goes over into a constant current, from
		// which it comes up to the right one.
		v, w := fmt.Sprintf("v(%s,%s)", p, q), c.Power.V.Base
		n.add("BL%s %s %s I=%s>6 ? %.17g/%s : %.17g", k, p, q, v, w, v, w/6)
	default:
		n.add("IL%s %s %s %.17g", k, p, q, c.Current.V.Base)
	}
}

// compareLone compares a case about one load: what it lists, alone on the network
// or on top of the loads that run all the time.
func (n *netlist) compareLone(t require.TestingT, c *CaseResult, spice map[string]float64, share float64, text string) {
	require.Nil(t, c.Problem)
	require.NotEmpty(t, c.Currents)
	listed := map[string]float64{}
	for name, v := range spice {
		_, volts := c.Voltages[name[2:]]
		_, amps := c.Currents[name[2:]]
		if name[0] == 'V' && volts && c.Voltages[n.zero] == 0 || name[0] == 'I' && amps {
			listed[name] = v
		}
	}
	n.compare(t, c, listed, share, text)
}

var spiceLine = regexp.MustCompile(`(?m)^\s*(\S+) = (\S+)\s*$`)

// run solves the netlist; it returns what was printed, by name.
func (n *netlist) run(t require.TestingT, dir string) map[string]float64 {
	var text strings.Builder
	text.WriteString("generated from a record\n" + n.text.String())
	text.WriteString(".options reltol=1e-9 abstol=1e-9 vntol=1e-10 itl1=500 gmin=1e-15 pivrel=0.9\n.control\nset numdgt=15\nop\n")
	for _, what := range n.print {
		text.WriteString("print " + what + "\n")
	}
	text.WriteString("quit\n.endc\n.end\n")
	path := filepath.Join(dir, "net.cir")
	require.NoError(t, os.WriteFile(path, []byte(text.String()), 0o600))
	out, err := exec.Command("ngspice", "-b", path).CombinedOutput()
	values := map[string]float64{}
	found := spiceLine.FindAllStringSubmatch(string(out), -1)
	require.Len(t, found, len(n.print), "ngspice (%v) on\n%s\nsaid\n%s", err, text.String(), out)
	for i, m := range found {
		require.Equal(t, n.print[i], m[1])
		v, err := strconv.ParseFloat(m[2], 64)
		require.NoError(t, err)
		values[n.names[i]] = v
	}
	return values
}

// compare holds a case of ours against ngspice: a current by its share of the
// larger of the two, with 10 nA let pass; a voltage, which counts from a reference
// that could be another, by its share of 12 V.
func (n *netlist) compare(t require.TestingT, c *CaseResult, spice map[string]float64, share float64, text string) {
	require.Nil(t, c.Problem)
	require.Empty(t, c.Gaps)
	for name, v := range spice {
		var ours, limit float64
		var known bool
		if name[0] == 'V' {
			ours, known = c.Voltages[name[2:]]
			ours -= c.Voltages[n.zero]
			limit = share * 12
		} else {
			ours, known = c.Currents[name[2:]]
			limit = share*max(math.Abs(ours), math.Abs(v)) + 1e-8
		}
		require.True(t, known, "%s is missing from case %s", name, c.Name)
		require.LessOrEqual(t, math.Abs(ours-v), limit, "case %s, %s: ours %.15g, ngspice %.15g\n%s", c.Name, name, ours, v, text)
	}
}

func caseOf(a *Analysis, kind CaseKind) *CaseResult {
	for _, c := range a.Cases.All() {
		if c.Kind == kind {
			return c
		}
	}
	return nil
}

// lowShare is 1.95 V over 2.10 V: a lead cell low and full.
const lowShare = 1.95 / 2.10

// TestAgreesWithNgspice solves invented networks of every kind of source and
// load with ngspice and compares every voltage and current: a relative
// difference under 1e-6, and under 1e-9 where no load is of constant power.
func TestAgreesWithNgspice(t *testing.T) {
	needSpice(t)
	dir := t.TempDir()
	for _, size := range []struct {
		name        string
		least, most int
	}{{"small", 1, 4}, {"middling", 5, 20}, {"large", 20, 70}} {
		t.Run(size.name, func(t *testing.T) {
			collapsed, nodes := 0, 0
			rapid.Check(t, func(t *rapid.T) {
				y, text := drawYard(t, size.least, size.most)
				r := read(t, text)
				a := Analyse(r)
				all := caseOf(a, All)
				nodes = max(nodes, len(all.Voltages))
				share := 1e-9
				if y.powered {
					share = 1e-6
				}
				if all.Problem != nil {
					require.Equal(t, Collapse, all.Problem.Kind, "%s\n%s", all.Problem.Says, text)
					collapsed++
				} else {
					n := writeNetlist(r, a, situation{loads: y.loads, lowCell: 1, position: "up"})
					n.compare(t, all, n.run(t, dir), share, text)
				}
				for _, c := range a.Cases.All() {
					if c.Kind != Alone && c.Kind != Stalled || c.Problem != nil || strings.HasSuffix(c.Name, "down") || !rapid.Bool().Draw(t, "spice") {
						continue
					}
					s := situation{loads: []string{c.Load}, lowCell: 1, position: "up"}
					if c.Kind == Stalled {
						s.loads, s.stalled = y.loads, c.Load
					}
					n := writeNetlist(r, a, s)
					n.compareLone(t, c, n.run(t, dir), share, text)
					break
				}
				if y.chargers > 0 {
					c := caseOf(a, Charging)
					gives := map[string]float64{}
					for _, m := range r.Components {
						if k := m.Kind.V; k != "battery" && record.KindOf(k).Source {
							gives[m.ID] = c.Sources[m.ID]
						}
					}
					n := writeNetlist(r, a, situation{lowCell: lowShare, charging: gives, position: "up"})
					spice := n.run(t, dir)
					n.compare(t, c, spice, 1e-9, text)
					n.settled(t, gives, spice, text)
				}
			})
			t.Logf("greatest network: %d terminals; no working point: %d", nodes, collapsed)
		})
	}
}
