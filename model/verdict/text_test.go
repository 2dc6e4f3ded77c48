package verdict_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

func TestTextFillsFiguresLimitsAndSubject(t *testing.T) {
	v := verdict.Verdict{
		Subject: "components.main-fuse",
		Figures: []verdict.Figure{
			{Name: "rated", Quantity: quantity.New(12, "V")},
			{Name: "via", Text: "house.pos"},
			{Name: "odd", Text: "{rated}"},
		},
		Limit: []verdict.Figure{{Name: "rated", Quantity: quantity.New(24, "V")}},
	}
	show := func(f verdict.Figure) string { return f.Print(quantity.Metric) }
	for template, want := range map[string]string{
		"":                                "",
		"no places":                       "no places",
		"rated {rated} for {limit.rated}": "rated 12 V for 24 V",
		"fed through {via}":               "fed through house.pos",
		"{subject} stands":                "components.main-fuse stands",
		"{unheard-of} stays":              "{unheard-of} stays",
		"{limit.via} stays":               "{limit.via} stays",
		"open {rated":                     "open {rated",
		"a value is no template: {odd}":   "a value is no template: {rated}",
	} {
		assert.Equal(t, want, v.Text(template, show), template)
	}
}
