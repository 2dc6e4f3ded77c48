package rules

import (
	"fmt"
	"maps"
	"path"
	"reflect"
	"strconv"
	"syscall"
	"testing"
	"time"

	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
)

// BenchmarkNew is the share of start-up that metadata takes, BenchmarkRead what
// the Rego of all rules adds when it is called for, and BenchmarkCompile what OPA
// adds for all.
func BenchmarkNew(b *testing.B) {
	for b.Loop() {
		if _, err := New(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRead(b *testing.B) {
	for b.Loop() {
		b.StopTimer()
		engine, err := New()
		if err != nil {
			b.Fatal(err)
		}
		b.StartTimer()
		if err := engine.load(engine.rules); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCompile(b *testing.B) {
	for b.Loop() {
		b.StopTimer()
		engine := readEngine(b)
		b.StartTimer()
		for _, r := range engine.rules {
			if _, err := r.query.prepared(); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func BenchmarkTranslate(b *testing.B) {
	engine := readEngine(b)
	for b.Loop() {
		for _, r := range engine.rules {
			translate(r, engine.kinds)
		}
	}
}

// grown returns the facts of a demo record, repeated until there are at least n
// conductors.
func grown(b *testing.B, engine *Engine, name string, n int) (*record.Record, *facts.Document) {
	b.Helper()
	r, doc := solved(b, name, demos(b)[name])
	places := maps.Collect(r.Places.All())
	times := (n + len(doc.Conductors) - 1) / len(doc.Conductors)
	value := reflect.ValueOf(doc).Elem()
	for _, kind := range engine.kinds {
		if kind.single {
			continue
		}
		field := value.Field(kind.field)
		all := reflect.MakeMap(field.Type())
		for entry := field.MapRange(); entry.Next(); {
			for i := range times {
				one := reflect.New(field.Type().Elem().Elem())
				one.Elem().Set(entry.Value().Elem())
				base := one.Interface().(based).Base()
				at := places[base.Path]
				at.Start.Line += 10000 * i
				base.Path += "~" + strconv.Itoa(i)
				places[base.Path] = at
				all.SetMapIndex(reflect.ValueOf(entry.Key().String()+"~"+strconv.Itoa(i)), one)
			}
		}
		field.Set(all)
	}
	r.Places = record.PlacesOf(places)
	return r, doc
}

// BenchmarkJudge judges demo records grown to n conductors, by the engine's own
// reading of the rules, briefly and with every verdict, and by OPA alone. Time of the processor is given apart: on
// a busy machine only that compares.
func BenchmarkJudge(b *testing.B) {
	fast, plain := engines(b)
	for _, name := range []string{"clean/windlass.yaml", "faulty/thruster-launch.yaml", "sparse/thruster-launch.yaml"} {
		for _, n := range []int{30, 100, 400} {
			r, doc := grown(b, fast, name, n)
			for way, judge := range map[string]func(*record.Record, *facts.Document, time.Time) (verdict.Record, error){
				"brief": fast.JudgeBriefly, "fast": fast.Judge, "plain": plain.Judge,
			} {
				b.Run(fmt.Sprintf("%s/n=%d/%s", path.Dir(name), n, way), func(b *testing.B) {
					b.ReportAllocs()
					var result verdict.Record
					var err error
					before := processorTime(b)
					for b.Loop() {
						if result, err = judge(r, doc, testDay); err != nil {
							b.Fatal(err)
						}
					}
					b.ReportMetric(float64(processorTime(b)-before)/float64(b.N), "cpu-ns/op")
					b.ReportMetric(float64(result.Counts.Total()), "verdicts")
				})
			}
		}
	}
}

// processorTime returns the time that the processor has spent on this process,
// ns.
func processorTime(b *testing.B) int64 {
	b.Helper()
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		b.Fatal(err)
	}
	return used.Utime.Nano() + used.Stime.Nano()
}
