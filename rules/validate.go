package rules

import (
	"path"
	"regexp"
	"slices"
	"strings"

	"github.com/open-policy-agent/opa/v1/ast"

	"driploop/model/verdict"
)

// root is the package below which all rules stand: root.topic.fault.
const root = "driploop.rules"

// yardRoot is the package below which the rules of a yard stand.
const yardRoot = "driploop.yard"

func (r *rule) namespace() string {
	if r.yard != nil {
		return yardRoot
	}
	return root
}

// kebab is the form of a topic and of a fault.
var kebab = regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)

// release is the form of a version.
var release = regexp.MustCompile(`^\d+\.\d+\.\d+$`)

// trusts lists how well a citation can have been checked.
var trusts = [...]verdict.Trust{verdict.Read, verdict.ReadPart, verdict.Secondary, verdict.Memory, verdict.Computed, verdict.NoSource}

// validator checks the metadata of rules against each other, the registers and
// the facts.
type validator struct {
	reg    register
	kinds  map[string]*collection
	faults *problems
}

// metadata checks what a rule says of itself and resolves what it names.
func (v *validator) metadata(r *rule) {
	severity, err := verdict.ParseSeverity(r.about.Custom.Severity)
	if err != nil {
		v.at(r, "custom.severity", "%v", err)
	}
	r.meta = r.about.describe(severity)
	v.complete(r)
	v.named(r)
	v.schema(r)
	r.of = v.kinds[r.meta.Subject]
	if r.of == nil {
		v.at(r, "custom.subject", "%q is no collection of facts%s", r.meta.Subject, meant(r.meta.Subject, names(v.kinds)))
		return
	}
	v.sources(r)
	r.needs = v.facts(r, "custom.needs", r.meta.Needs)
	r.asks = v.facts(r, "custom.asks", r.meta.Asks)
	r.decides = v.facts(r, "custom.decides", r.meta.Decides)
	v.trusted(r)
	v.ownVoice(r)
}

// policy checks the Rego of a rule whose metadata has been checked.
func (v *validator) policy(r *rule) {
	if got := strings.TrimPrefix(r.mod.Package.Path.String(), "data."); r.pkg != "" && got != r.pkg {
		v.faults.addAt(r.shown, r.mod.Package.Location, "package %s is not that of id %q; write package %s", got, r.meta.ID, r.pkg)
	}
	if r.of == nil {
		return
	}
	v.parts(r)
	v.safe(r)
	v.words(r)
}

func (v *validator) at(r *rule, entry, format string, args ...any) {
	line, column := r.about.place(entry)
	v.faults.add(r.shown, line, format, args...)
	(*v.faults)[len(*v.faults)-1].Column = column
}

// complete checks that nothing is missing that a reader is shown.
func (v *validator) complete(r *rule) {
	for _, required := range []struct{ entry, value string }{
		{"title", r.meta.Title},
		{"description", r.meta.Why},
		{"custom.subject", r.meta.Subject},
		{"custom.applies", r.meta.Applies},
		{"custom.says", r.meta.Says},
		{"custom.remedy", r.meta.Remedy},
		{"custom.since", r.meta.Since},
	} {
		if strings.TrimSpace(required.value) == "" {
			v.at(r, required.entry, "metadata has no %s", strings.TrimPrefix(required.entry, "custom."))
		}
	}
	for i, mend := range r.meta.Mends {
		if !verdict.IsMend(mend) {
			v.at(r, entry("custom.mends", i), "mends of %q; write size, rating, place, or an entry of the subject with its value, such as \"slack: two\"", mend)
		}
	}
	if len(r.meta.Sources) == 0 {
		v.at(r, "custom.sources", "metadata has no sources")
	}
	if r.meta.Since != "" && !release.MatchString(r.meta.Since) {
		v.at(r, "custom.since", "since %q is no release such as 0.1.0", r.meta.Since)
	}
}

// named checks that id and file are one name, and says what package it asks for.
func (v *validator) named(r *rule) {
	id := r.meta.ID
	topic, fault, ok := strings.Cut(id, "/")
	if !ok || !kebab.MatchString(topic) || !kebab.MatchString(fault) {
		v.at(r, "custom.id", "id %q is not topic/fault in lower case with hyphens", id)
		return
	}
	snake := strings.ReplaceAll(fault, "-", "_")
	if want := path.Join(topic, snake+".rego"); r.file != want {
		v.at(r, "custom.id", "id %q belongs in %s", id, want)
	}
	r.pkg = r.namespace() + "." + strings.ReplaceAll(topic, "-", "_") + "." + snake
}

// schema checks that stock OPA checks the rule against the facts too.
func (v *validator) schema(r *rule) {
	if len(r.about.Schemas) != 1 || len(r.about.Schemas[0]) != 1 || r.about.Schemas[0]["input"] != "schema.facts" {
		v.at(r, "schemas", `metadata has to say "schemas: [{input: schema.facts}]"`)
	}
}

// sources checks each citation.
func (v *validator) sources(r *rule) {
	ids := v.reg.setIDs()
	seen := map[[3]string]bool{}
	for i, c := range r.meta.Sources {
		at := entry("custom.sources", i)
		if !slices.Contains(ids, c.Set) {
			v.at(r, at, "%q is no practice set%s", c.Set, meant(c.Set, ids))
		}
		if v.reg.sources[c.Source] == nil {
			v.at(r, at, "%q is no source of sources.yaml%s", c.Source, meant(c.Source, v.reg.order))
		}
		if !slices.Contains(trusts[:], c.Trust) {
			v.at(r, at, "%q is no trust; use read, read-part, secondary, unverified, computed or practice", c.Trust)
		}
		if strings.TrimSpace(c.Asks) == "" {
			v.at(r, at, "citation does not say what the clause asks")
		}
		key := [3]string{c.Set, c.Source, c.Clause}
		if seen[key] {
			v.at(r, at, "%s %s stands twice in %s", c.Source, c.Clause, c.Set)
		}
		seen[key] = true
	}
	r.sets = r.meta.Sets()
	for i, c := range r.meta.Sources {
		if len(c.Needs) > 0 {
			r.clauses = append(r.clauses, clauseNeed{set: r.bit(c.Set), needs: v.facts(r, entry("custom.sources", i), c.Needs)})
		}
	}
}

// bit returns the mask of one practice set of the rule, 0 if it has none such.
func (r *rule) bit(set string) mask {
	if i := slices.Index(r.sets, set); i >= 0 {
		return 1 << i
	}
	return 0
}

// facts resolves names of facts.
func (v *validator) facts(r *rule, at string, named []string) []need {
	var all []need
	for _, name := range named {
		of, plain := r.of, name
		if kind, rest, ok := strings.Cut(name, "."); ok {
			of, plain = v.kinds[kind], rest
		}
		if of == nil || of != r.of && !of.single {
			v.at(r, at, "%q is no fact that the rule can read; write a fact of %s, vessel.… or job.…", name, r.of.name)
			continue
		}
		f, ok := of.facts[plain]
		if !ok {
			v.at(r, at, "%s has no fact %q%s", of.name, plain, meant(plain, names(of.facts)))
			continue
		}
		all = append(all, need{name: name, of: of, fact: operandOf(r.of, of, f), at: at})
	}
	return all
}

// trusted refuses a grave rule that rests on memory alone.
func (v *validator) trusted(r *rule) {
	if r.meta.Severity > verdict.Caution && unverified(r.meta.Sources) {
		v.at(r, "custom.severity", "a rule resting on unverified sources alone is caution or notice, not %s", r.meta.Severity)
	}
}

// unverified tells whether nothing but memory stands behind the citations.
func unverified(cited []verdict.Citation) bool {
	return len(cited) > 0 && !slices.ContainsFunc(cited, func(c verdict.Citation) bool { return c.Trust != verdict.Memory })
}

// parts checks which Rego rules the package defines.
func (v *validator) parts(r *rule) {
	breach := false
	for _, def := range r.mod.Rules {
		switch nameOf(def) {
		case "breach":
			breach = true
			v.partialSet(r, def)
		case "applies":
			r.hasApplies = true
			v.partialSet(r, def)
		case "excludes":
			r.hasExcludes = true
			v.partialSet(r, def)
		case "asks":
			r.hasAsks = true
			v.partialSet(r, def)
		case "limits":
			r.limits = v.readLimits(r, def)
		}
	}
	if !breach {
		v.faults.addAt(r.shown, r.mod.Package.Location, "the package defines no breach")
	}
	if r.hasAsks != (len(r.asks) > 0) {
		v.at(r, "custom.asks", `the Rego rule "asks" and the list "asks" of the metadata go together`)
	}
	if r.hasExcludes && !r.hasApplies {
		v.faults.addAt(r.shown, r.mod.Package.Location, "excludes says for certain what applies leaves out, and there is no applies")
	}
	if len(r.decides) > 0 && !r.hasApplies {
		v.at(r, "custom.decides", `"decides" names facts that the Rego rule "applies" reads, and there is none`)
	}
}

func (v *validator) partialSet(r *rule, def *ast.Rule) {
	if def.Head.Key == nil || def.Head.Value != nil || len(def.Head.Args) > 0 || len(def.Head.Ref()) > 1 {
		v.faults.addAt(r.shown, def.Location, `%s is a set; write "%s contains … if { … }"`, nameOf(def), nameOf(def))
	}
}

// across checks what concerns several rules: ids used once, related rules that
// exist.
func (v *validator) across(all []*rule) {
	files := map[string]string{}
	ids := make([]string, 0, len(all))
	for _, r := range all {
		if other, used := files[r.meta.ID]; used {
			v.at(r, "custom.id", "id %q is that of %s too; choose another", r.meta.ID, other)
		}
		files[r.meta.ID] = r.shown
		ids = append(ids, r.meta.ID)
	}
	for _, r := range all {
		for i, related := range r.meta.Related {
			if _, ok := files[related]; !ok || related == r.meta.ID {
				v.at(r, entry("custom.related", i), "related rule %q does not exist%s", related, meant(related, ids))
			}
		}
	}
}
