package main

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"driploop/model/verdict"
)

func TestSparseRecordBreachesNothingAndAsks(t *testing.T) {
	_, result := judged(t, shippedRules(t), "sparse", demo(t, "sparse/thruster-launch.yaml"))
	assert.Empty(t, of(verdict.Breach, result.Verdicts))
	fields := map[string]bool{}
	for i := range result.Verdicts {
		v := &result.Verdicts[i]
		if v.Outcome != verdict.Undecided {
			continue
		}
		assert.NotEmpty(t, v.Missing, "%s at %s says what is missing", v.Rule.ID, v.Subject)
		for _, gap := range v.Missing {
			fields[gap.Field] = true
		}
	}
	for _, field := range []string{
		"conductors.P1.length", "conductors.P4.size", "components.main-fuse.interrupt", "components.house.movement", "components.thruster.ip",
		"spaces.bow-locker.fuel_vapour", "penetrations.foot-switch-hole.seal.kind", "sign_off.on",
	} {
		assert.Contains(t, fields, field, "asked for")
	}
}

// The sparse record holds only values that the clean and the faulty one share:
// either may be what was really done. So a rule that is met in it must be met
// in both; anything else was passed for want of knowledge. What the sparse
// record does not name at all is left out of both: there it is not known to be
// aboard.
func TestSparseRecordIsMetOnlyWhereNoCompletionBreaches(t *testing.T) {
	engine := shippedRules(t)
	sparse := demo(t, "sparse/thruster-launch.yaml")
	_, result := judged(t, engine, "sparse", sparse)
	met := map[string]bool{}
	for i := range result.Verdicts {
		if v := &result.Verdicts[i]; v.Outcome == verdict.Met {
			met[v.Rule.ID+" at "+v.Subject] = true
		}
	}
	require.NotEmpty(t, met)
	for _, path := range []string{"clean/thruster-launch.yaml", "faulty/thruster-launch.yaml"} {
		t.Run(path, func(t *testing.T) {
			completion := leaves(t, demo(t, path)).(map[string]any)
			assert.Empty(t, differences("", leaves(t, sparse), completion), "agrees with the sparse record")
			keep(leaves(t, sparse).(map[string]any), completion)
			text, err := yaml.Marshal(completion)
			require.NoError(t, err)
			_, full := judged(t, engine, path, strings.ReplaceAll(string(text), "T00:00:00Z", "")) // dates are days
			compared := 0
			for i := range full.Verdicts {
				v := &full.Verdicts[i]
				at := v.Rule.ID + " at " + v.Subject
				if met[at] {
					compared++
				}
				if v.Outcome == verdict.Breach {
					assert.NotContains(t, met, at, "met in the sparse record, breached here")
				}
			}
			assert.Greater(t, compared, len(met)/2, "the completion has the subjects of the sparse record")
		})
	}
}

// keep takes out of a record what another one does not name, and every mention
// of it.
func keep(named, record map[string]any) {
	gone := map[string]bool{}
	for _, section := range []string{"components", "conductors", "penetrations"} {
		entries, kept := record[section].(map[string]any), named[section].(map[string]any)
		for id := range entries {
			if kept[id] == nil {
				delete(entries, id)
				gone[id] = true
			}
		}
	}
	for _, section := range []string{"bundles", "penetrations"} {
		for _, entry := range record[section].(map[string]any) {
			for _, list := range []string{"members", "passes"} {
				if ids, ok := entry.(map[string]any)[list].([]any); ok {
					entry.(map[string]any)[list] = slices.DeleteFunc(ids, func(id any) bool { return gone[id.(string)] })
				}
			}
		}
	}
	record["tests"] = slices.DeleteFunc(record["tests"].([]any), func(test any) bool {
		for _, of := range []string{"load", "conductor", "penetration"} {
			if id, ok := test.(map[string]any)[of].(string); ok && gone[id] {
				return true
			}
		}
		return false
	})
}

func leaves(t *testing.T, text string) any {
	t.Helper()
	var tree any
	require.NoError(t, yaml.Unmarshal([]byte(text), &tree))
	return tree
}

// differences lists the values of a that b lacks or has differently. Lists of
// mappings compare by place, "unknown" agrees with anything; the job's number,
// title and sign-off tell nothing of the work.
func differences(path string, a, b any) []string {
	switch a := a.(type) {
	case map[string]any:
		into, ok := b.(map[string]any)
		if !ok {
			return []string{path}
		}
		var all []string
		for _, key := range slices.Sorted(maps.Keys(a)) {
			if path == "" && key == "job" {
				continue
			}
			all = append(all, differences(path+"."+key, a[key], into[key])...)
		}
		return all
	case []any:
		into, ok := b.([]any)
		if !ok || len(into) < len(a) {
			return []string{path}
		}
		var all []string
		for i := range a {
			all = append(all, differences(fmt.Sprintf("%s[%d]", path, i), a[i], into[i])...)
		}
		return all
	}
	if a == "unknown" || a == b {
		return nil
	}
	return []string{fmt.Sprintf("%s: %v, not %v", path, a, b)}
}
