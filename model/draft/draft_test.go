package draft

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/record"
	"driploop/model/verdict"
)

func windlass() Answers {
	return Answers{
		"kind": "windlass", "boat": "Marigold", "voltage": "12 V", "hull": "frp", "propulsion": "diesel-inboard", "current": "35 A",
		"load": "open-deck", "length": "25 ft",
	}
}

// asks is a judge to whom every rule of a few waits for the same entries.
func asks(paths ...string) Judge {
	return func(text []byte) (*verdict.Record, error) {
		if _, faults := record.Decode("draft.yaml", text); len(faults) > 0 {
			return nil, faults
		}
		var v verdict.Verdict
		v.Rule, v.Outcome = &verdict.Rule{ID: "any/rule"}, verdict.Undecided
		for _, path := range paths {
			v.Missing = append(v.Missing, verdict.Gap{Field: path})
		}
		return &verdict.Record{Verdicts: []verdict.Verdict{v}}, nil
	}
}

func TestAnswersSayAllThatIsWrong(t *testing.T) {
	a := windlass()
	a["kind"], a["voltage"], a["current"], a["holes"], a["practice"], a["colour"] = "windlas", "12", "-3 A", "many", "us-federal, mars", "red"
	delete(a, "boat")
	_, err := Write(a, asks())
	require.Error(t, err)
	for _, says := range []string{
		`boat: not answered; What is the boat's name? For example "Marigold"`,
		"colour: is not asked for; the answers are kind, boat,",
		`current: "-3 A" is not above zero`,
		`holes: "many" is not a number from 0 to 20`,
		`kind: "windlas" is none of accessory, battery-bank,`,
		`practice: "mars" is none of us-federal,`,
		`voltage: "12" has no unit`,
	} {
		assert.Contains(t, err.Error(), says)
	}
}

func TestEveryKindDraftsARecord(t *testing.T) {
	for _, kind := range kinds() {
		for _, length := range []string{"25 ft", "8 m"} {
			a := windlass()
			a["kind"], a["length"], a["boat"], a["holes"] = kind, length, `Mari: "gold" #1`, "2"
			text, err := Write(a, asks())
			require.NoError(t, err, kind)
			r, faults := record.Decode("draft.yaml", text)
			require.Empty(t, faults, "%s\n%s", kind, text)
			assert.Equal(t, `Mari: "gold" #1`, r.Vessel.Name.V)
			assert.Equal(t, kind, r.Job.Kind.V)
			assert.Len(t, r.Penetrations, 2)
			again, err := Write(a, asks())
			require.NoError(t, err)
			assert.Equal(t, string(text), string(again), "the same answers, another record")
		}
	}
}

func TestEveryJobKindOfTheFormatButTheOpenOnesHasAPlan(t *testing.T) {
	for _, kind := range wordsOf("job.kind") {
		if !slices.Contains([]string{"engine", "rewire", "other"}, kind) {
			assert.Contains(t, kinds(), kind)
		}
	}
}

func TestWhatRulesWaitForIsAskedWhereItBelongs(t *testing.T) {
	text, err := Write(windlass(), asks(
		"components.battery.chemistry", "conductors.P1.insulation", "conductors.P2.tinned", "conductors.P1.bend_radius", "conductors.N1.ends.to.torque",
		"conductors.P3.ends.from.crimp.tool", "conductors.P3.route[1].bilge", "penetrations.hole-1.seal.kind", "vessel.earthing", "nowhere.at.all",
		"components.battery.posts.pos.stud"))
	require.NoError(t, err)
	r, faults := record.Decode("draft.yaml", text)
	require.Empty(t, faults, string(text))
	assert.Equal(t, record.Unknown, r.Component("battery").Chemistry.State)
	assert.Equal(t, record.Unknown, r.Component("battery").Posts[0].Stud.State)
	assert.Equal(t, record.Unknown, r.Vessel.Earthing.State)
	assert.Equal(t, record.Unknown, r.Penetrations[0].Seal.Kind.State)
	for _, id := range []string{"P1", "P2", "N1"} {
		c := r.Conductor(id)
		assert.Equal(t, record.Given, c.Insulation.State, "proposed")
		assert.Equal(t, record.Unknown, c.Tinned.State, "%s: all cables of a job share their make", id)
		assert.Equal(t, record.Unknown, c.BendRadius.State, "%s: each cable is bent in its own way", id)
		assert.Equal(t, record.Unknown, c.Ends.To.Crimp.Tool.State, "%s: all ends share the tool", id)
	}
	assert.Equal(t, record.Unknown, r.Conductor("N1").Ends.To.Torque.State)
	assert.Equal(t, record.Absent, r.Conductor("P1").Ends.To.Torque.State, "nobody asked for this one")
	assert.NotContains(t, string(text), "nowhere")
	assert.Contains(t, string(text), "    chemistry: unknown                  # Kind of cells: flooded, agm, gel, lithium\n")
}

// TestWhatIsAlikeIsAskedForOnce counts how often a value has to be written: once
// a gauge, once a component, never where it could speak for another gauge.
func TestWhatIsAlikeIsAskedForOnce(t *testing.T) {
	text, err := Write(windlass(), asks("conductors.P1.strands", "conductors.P1.splices", "conductors.P1.ends.to.stud", "conductors.C1.ends.from.stud", "conductors.P1.ends.from.crimp.pull"))
	require.NoError(t, err)
	count := func(entry string) int { return strings.Count(string(text), entry+": unknown") }
	assert.Equal(t, 1, count("splices"))
	assert.Equal(t, 2, count("strands"), "of the power and of the control cable")
	assert.Equal(t, 2, count("pull"), "a die fits one gauge")
	assert.Equal(t, 4, count("stud"), "circuit breaker, and the control ends on box, fuse and switch")
	r, faults := record.Decode("draft.yaml", text)
	require.Empty(t, faults, string(text))
	assert.Equal(t, record.Unknown, r.Conductor("P2").Ends.From.Stud.State, "the same component")
	assert.Equal(t, record.Absent, r.Conductor("P2").Ends.To.Stud.State, "another component")
	assert.Equal(t, record.Unknown, r.Conductor("C3").Ends.To.Stud.State)
	assert.Equal(t, record.Unknown, r.Conductor("C4").Strands.State)
}

// TestASizeIsProposedOnlyIfTheRulesAreKept gives a judge for whom 10 AWG is the
// least that will do, and one who is never content.
func TestASizeIsProposedOnlyIfTheRulesAreKept(t *testing.T) {
	from := func(least string) Judge {
		return func(text []byte) (*verdict.Record, error) {
			one := verdict.Verdict{Rule: &verdict.Rule{ID: "conductors/overloaded"}, Subject: "conductors.P1", Outcome: verdict.Breach}
			if least != "" && strings.Contains(string(text), "size: "+least) {
				one.Outcome = verdict.Met
			}
			return &verdict.Record{Verdicts: []verdict.Verdict{one}}, nil
		}
	}
	a := windlass()
	a["kind"] = "lights"
	text, err := Write(a, from("10 AWG"))
	require.NoError(t, err)
	assert.Equal(t, 5, strings.Count(string(text), "size: 10 AWG"))
	text, err = Write(a, from(""))
	require.NoError(t, err)
	assert.Equal(t, 5, strings.Count(string(text), "size: unknown"))
	assert.Contains(t, string(text), "no usual size keeps the rules")

	a["length"], a["practice"] = "8 m", "international"
	text, err = Write(a, from("16 mm2"))
	require.NoError(t, err)
	assert.Contains(t, string(text), "size: 16 mm2")
}

func TestTrialValuesNeverStay(t *testing.T) {
	text, err := Write(windlass(), asks("spaces.battery-space.ambient", "vessel.earthing", "conductors.P1.class", "conductors.P1.material"))
	require.NoError(t, err)
	r, faults := record.Decode("draft.yaml", text)
	require.Empty(t, faults)
	assert.Equal(t, record.Unknown, r.Vessel.Earthing.State)
	assert.Equal(t, record.Unknown, r.Space("battery-space").Ambient.State)
	assert.Equal(t, record.Unknown, r.Conductor("P1").Class.State)
	assert.Equal(t, record.Unknown, r.Component("reversing-box").Coils[0].Current.State)
	assert.Equal(t, record.Unknown, r.Conductor("P3").Route[0].Length.State, "the answer says how long the run is, not where")
}

func TestAFaultOfTheJudgeIsReported(t *testing.T) {
	broken := errors.New("broken")
	_, err := Write(windlass(), func([]byte) (*verdict.Record, error) { return nil, broken })
	require.ErrorIs(t, err, broken)
}
