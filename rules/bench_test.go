package rules

import (
	"fmt"
	"testing"

	"driploop/model/record"
)

// BenchmarkNew is the share of start-up that loading the rules takes, and
// BenchmarkCompile what the first judgement adds to it.
func BenchmarkNew(b *testing.B) {
	for b.Loop() {
		if _, err := New(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCompile(b *testing.B) {
	for b.Loop() {
		b.StopTimer()
		engine, err := New()
		if err != nil {
			b.Fatal(err)
		}
		b.StartTimer()
		if _, err := engine.queries(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkJudge judges a made-up record with n conductors, and shows apart how
// long it takes to hand over its facts and to evaluate the rules.
func BenchmarkJudge(b *testing.B) {
	engine, err := New()
	if err != nil {
		b.Fatal(err)
	}
	for _, n := range []int{30, 100, 400} {
		doc := made(n)
		b.Run(fmt.Sprintf("n=%d/whole", n), func(b *testing.B) {
			for b.Loop() {
				if _, err := engine.Judge(&record.Record{}, doc, testDay); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(fmt.Sprintf("n=%d/input", n), func(b *testing.B) {
			for b.Loop() {
				engine.input(engine.list(doc))
			}
		})
		input := engine.input(engine.list(doc))
		b.Run(fmt.Sprintf("n=%d/evaluate", n), func(b *testing.B) {
			for b.Loop() {
				if _, err := engine.evaluate(input); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
