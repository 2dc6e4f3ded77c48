package rules

import (
	"bytes"
	"context"
	"encoding/json"
	"reflect"
	"testing"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/rego"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/facts"
)

// TestFactsAreAbsentOnlyByPointer checks what the engine takes for granted of
// the fact types: what may be left out is a pointer, and the rest always stands.
func TestFactsAreAbsentOnlyByPointer(t *testing.T) {
	all := collections()
	require.Contains(t, all, "conductors")
	require.Contains(t, all, "vessel")
	document := reflect.TypeFor[facts.Document]()
	for _, c := range all {
		of := document.Field(c.field).Type.Elem()
		if !c.single {
			of = of.Elem()
		}
		for _, f := range c.order {
			kind := of.FieldByIndex(f.index).Type.Kind()
			assert.Equal(t, kind == reflect.Pointer, f.optional, "%s.%s", c.name, f.name)
		}
	}
}

// plainInput is the input that stock OPA is given: the document as JSON, as
// "driploop facts" prints it.
func plainInput(t *testing.T, doc *facts.Document) any {
	t.Helper()
	text, err := json.Marshal(doc)
	require.NoError(t, err)
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.UseNumber()
	var input any
	require.NoError(t, decoder.Decode(&input))
	return input
}

// someDocuments are the facts of the demo records and made-up ones.
func someDocuments(t *testing.T) map[string]*facts.Document {
	t.Helper()
	all := map[string]*facts.Document{"made up": made(12)}
	for name, text := range demos(t) {
		_, doc := solved(t, name, text)
		all[name] = doc.On(testDay)
	}
	return all
}

func TestInputIsTheDocumentWithoutWhatIsOpen(t *testing.T) {
	engine := readEngine(t)
	for name, doc := range someDocuments(t) {
		t.Run(name, func(t *testing.T) { inputIsTheDocument(t, engine, doc) })
	}
}

func inputIsTheDocument(t *testing.T, engine *Engine, doc *facts.Document) {
	t.Helper()
	want, ok := plainInput(t, doc).(map[string]any)
	require.True(t, ok)
	delete(want, "format")
	delete(want, "practice")
	for name, kind := range engine.kinds {
		subjects, ok := want[name].(map[string]any)
		switch {
		case !ok:
			want[name] = map[string]any{} // nil in a made-up document
		case kind.single:
			delete(subjects, openFacts)
		default:
			for _, subject := range subjects {
				delete(subject.(map[string]any), openFacts)
			}
		}
	}
	input, ok := engine.input(engine.list(doc)).(ast.Object)
	require.True(t, ok)
	assert.Equal(t, len(want), input.Len())
	for name, part := range want {
		value, err := ast.InterfaceToValue(part)
		require.NoError(t, err)
		got := input.Get(ast.StringTerm(name))
		require.NotNil(t, got, name)
		assert.Zero(t, ast.Compare(value, got.Value), "%s: want %v, got %v", name, value, got)
	}
}

// TestStockOPAFindsTheSame evaluates the rules on the JSON of documents with
// nothing of ours but the Rego, and compares every part of every rule.
func TestStockOPAFindsTheSame(t *testing.T) {
	engine := readEngine(t)
	modules := parsed(t)
	options := make([]func(*rego.Rego), 0, len(modules)+1)
	options = append(options, rego.Query("found := data.driploop"))
	for _, module := range modules {
		options = append(options, rego.ParsedModule(module))
	}
	stock, err := rego.New(options...).PrepareForEval(context.Background())
	require.NoError(t, err)
	for name, doc := range someDocuments(t) {
		results, err := stock.Eval(context.Background(), rego.EvalInput(plainInput(t, doc)))
		require.NoError(t, err)
		sameFindings(t, name, engine, engine.input(engine.list(doc)), results[0].Bindings["found"].(map[string]any))
	}
}

func sameFindings(t *testing.T, name string, engine *Engine, input ast.Value, stock map[string]any) {
	t.Helper()
	law, err := engine.law()
	require.NoError(t, err)
	binds, err := law.query.run(context.Background(), input)
	require.NoError(t, err)
	assert.Equal(t, stock["binding"].(map[string]any)["binds"], binds["binds"], name)
	for _, r := range engine.rules {
		at := any(stock)
		for _, part := range r.mod.Package.Path[2:] {
			at = at.(map[string]any)[string(part.Value.(ast.String))]
		}
		ours, err := r.query.run(context.Background(), input)
		require.NoError(t, err)
		for part, members := range ours {
			assert.Equal(t, at.(map[string]any)[part], members, "%s: %s of %s", name, part, r.meta.ID)
		}
	}
}
