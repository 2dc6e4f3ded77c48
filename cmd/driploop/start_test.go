package main

import (
	"io"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/draft"
	"driploop/model/verdict"
	"driploop/model/yard"
)

// TestDraftsBreakNoRule drafts every kind of job and judges it: nothing is
// breached, every entry that a rule waits for stands there as unknown, and
// sizes are proposed.
func TestDraftsBreakNoRule(t *testing.T) {
	s := &session{out: &output{w: io.Discard}, engine: compiled()}
	j, err := s.judgingBy(&yard.Settings{}, time.Now())
	require.NoError(t, err)
	for _, kind := range draft.Questions()[0].Words {
		t.Run(kind, func(t *testing.T) {
			text, err := draft.Write(draft.Answers{
				"kind": kind, "boat": "Marigold", "voltage": "12 V", "hull": "frp", "propulsion": "petrol-sterndrive", "current": "20 A",
				"batteries": "engine", "load": "open-deck", "length": "6 m", "holes": "1",
			}, j.draft)
			require.NoError(t, err)
			assert.NotContains(t, string(text), "no usual size", "a size for 20 A over 6 m")
			assert.Contains(t, string(text), " AWG  ")
			judged, err := j.draft(text)
			require.NoError(t, err)
			require.NotZero(t, judged.Counts[verdict.Undecided])
			for i := range judged.Verdicts {
				v := &judged.Verdicts[i]
				require.NotEqual(t, verdict.Breach, v.Outcome, "%s on %s", v.Rule.ID, v.Subject)
				for _, gap := range v.Missing {
					if gap.Field != "" && !strings.HasPrefix(gap.Field, "tests") {
						key := gap.Field[strings.LastIndexByte(gap.Field, '.')+1:]
						assert.Contains(t, string(text), key+":", "%s waits for %s, which is not in the draft", v.Rule.ID, gap.Field)
					}
				}
			}
		})
	}
}

// TestSizingRulesExist: a rule that is not there could never hold a size back.
func TestSizingRulesExist(t *testing.T) {
	e, err := compiled()()
	require.NoError(t, err)
	for _, id := range draft.Sizing() {
		_, err := e.Rule(id)
		assert.NoError(t, err, id)
	}
}
