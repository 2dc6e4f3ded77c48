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

func TestAFigureOverItsLimitNeverLooksEqualToIt(t *testing.T) {
	of := func(mm float64) []verdict.Figure {
		return []verdict.Figure{{Name: "length", Quantity: quantity.New(mm, "mm")}}
	}
	for _, c := range []struct {
		found, limit         float64
		foundShown, limShown string
	}{
		{1018, 1016, "1.018 m", "1.016 m"},
		{1016, 1016, "1.02 m", "1.02 m"},
		{1100, 1016, "1.1 m", "1.02 m"},
		{1016.0001, 1016, "1.0160001 m", "1.016 m"},
	} {
		v := verdict.Verdict{Figures: of(c.found), Limit: of(c.limit)}
		show := v.Show(quantity.Metric)
		assert.Equal(t, c.foundShown, show(v.Figures[0]))
		assert.Equal(t, c.limShown, show(v.Limit[0]))
	}
}
