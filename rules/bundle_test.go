package rules

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"maps"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/facts"
)

// stockOPA is the program of the Open Policy Agent, as .ci/run builds it. Without
// it the test is skipped, but fails where CI=true, so that no build goes green
// unchecked.
func stockOPA(t *testing.T) string {
	t.Helper()
	path, err := filepath.Abs(filepath.Join("..", ".bin", "opa"))
	require.NoError(t, err)
	const build = "go build -modfile=.tools/opa.mod -o .bin/opa github.com/open-policy-agent/opa"
	if _, err := os.Stat(path); err != nil {
		require.NotEqual(t, "true", os.Getenv("CI"), "opa is needed: %s", build)
		t.Skip("opa is not built: " + build)
	}
	return path
}

// bundled writes the bundle of the shipped rules to a file.
func bundled(t *testing.T) string {
	t.Helper()
	e, err := New()
	require.NoError(t, err)
	return bundleOf(t, e)
}

// bundleOf writes the bundle of an engine's rules to a file.
func bundleOf(t *testing.T, e *Engine) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "rules.tar.gz")
	f, err := os.Create(path)
	require.NoError(t, err)
	require.NoError(t, e.Bundle(f))
	require.NoError(t, f.Close())
	return path
}

// someFacts are the documents as "driploop facts" prints them.
func someFacts(t *testing.T) (map[string]*facts.Document, map[string][]byte) {
	t.Helper()
	docs, texts := someDocuments(t), map[string][]byte{}
	for name, doc := range docs {
		text, err := json.Marshal(doc)
		require.NoError(t, err)
		texts[name] = text
	}
	return docs, texts
}

func decoded(t *testing.T, text []byte, into any) {
	t.Helper()
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.UseNumber()
	require.NoError(t, decoder.Decode(into), "%.300s", text)
}

func TestTheSameRulesGiveTheSameBundle(t *testing.T) {
	one, err := os.ReadFile(bundled(t))
	require.NoError(t, err)
	two, err := os.ReadFile(bundled(t))
	require.NoError(t, err)
	assert.NotEmpty(t, one)
	assert.True(t, bytes.Equal(one, two))
}

func TestStockOPAReadsTheBundle(t *testing.T) {
	opa, path := stockOPA(t), bundled(t)
	out, err := exec.Command(opa, "inspect", "--format", "json", path).CombinedOutput()
	require.NoError(t, err, "%s", out)
	var told struct {
		Manifest   struct{ Revision string }
		Namespaces map[string][]string
	}
	require.NoError(t, json.Unmarshal(out, &told))
	engine := readEngine(t)
	assert.Equal(t, engine.Digest(), told.Manifest.Revision)
	for _, r := range engine.rules {
		assert.Contains(t, told.Namespaces, "data."+r.pkg)
	}
	assert.Contains(t, told.Namespaces, "data.driploop.binding")
}

// TestStockOPAFindsTheSameByTheBundle has the program opa evaluate the bundle on
// the facts of records, and compares every part of every rule.
func TestStockOPAFindsTheSameByTheBundle(t *testing.T) {
	opa, path, engine := stockOPA(t), bundled(t), readEngine(t)
	docs, texts := someFacts(t)
	for name, doc := range docs {
		sameFindings(t, name, engine, engine.input(engine.list(doc)), byBundle(t, opa, path, name, texts[name]))
	}
}

// byBundle is what the program opa makes of facts by a bundle.
func byBundle(t *testing.T, opa, path, name string, facts []byte) map[string]any {
	t.Helper()
	eval := exec.Command(opa, "eval", "--bundle", path, "--stdin-input", "--format", "json", "data.driploop")
	eval.Stdin = bytes.NewReader(facts)
	out, err := eval.Output()
	require.NoError(t, err, "%s: %s", name, out)
	var got struct {
		Result []struct {
			Expressions []struct{ Value map[string]any }
		}
	}
	decoded(t, out, &got)
	require.Len(t, got.Result, 1)
	return got.Result[0].Expressions[0].Value
}

// TestAServerOfOPAFindsTheSameUnderLoad asks an OPA that serves the bundle, without
// and with the rules of a yard, from several clients at once.
func TestAServerOfOPAFindsTheSameUnderLoad(t *testing.T) {
	for name, engine := range map[string]*Engine{"shipped rules": readEngine(t), "and those of a yard": withYard(t)} {
		t.Run(name, func(t *testing.T) { findsTheSameUnderLoad(t, engine) })
	}
}

func findsTheSameUnderLoad(t *testing.T, engine *Engine) {
	const clients, requests = 4, 20
	client := served(t, stockOPA(t), bundleOf(t, engine))
	docs, texts := someFacts(t)
	names := slices.Sorted(maps.Keys(docs))
	type reply struct {
		name string
		body []byte
		err  error
	}
	replies := make(chan reply, clients*requests)
	var all sync.WaitGroup
	for c := range clients {
		all.Go(func() {
			for n := range requests {
				name := names[(c*requests/2+n)%len(names)] // half of them asked by two clients
				body, err := asked(client, texts[name])
				replies <- reply{name, body, err}
			}
		})
	}
	all.Wait()
	close(replies)
	first := map[string]map[string]any{}
	for r := range replies {
		require.NoError(t, r.err)
		var got struct{ Result map[string]any }
		decoded(t, r.body, &got)
		if want, is := first[r.name]; is {
			require.Equal(t, want, got.Result, r.name)
			continue
		}
		first[r.name] = got.Result
		sameFindings(t, r.name, engine, engine.input(engine.list(docs[r.name])), got.Result)
	}
	assert.GreaterOrEqual(t, len(first), min(requests, len(names)))
}

// served starts a server on a socket of its own and waits until it answers.
func served(t *testing.T, opa, path string) *http.Client {
	t.Helper()
	folder, err := os.MkdirTemp("", "opa") // the path of a socket has to be short
	require.NoError(t, err)
	t.Cleanup(func() { _ = os.RemoveAll(folder) })
	socket := filepath.Join(folder, "s")
	var log bytes.Buffer
	server := exec.Command(opa, "run", "--server", "--bundle", path, "--addr", "unix://"+socket, "--disable-telemetry", "--log-level", "error")
	server.Stdout, server.Stderr = &log, &log
	require.NoError(t, server.Start())
	t.Cleanup(func() {
		_ = server.Process.Kill()
		_ = server.Wait() // killed, which is no news
	})
	client := &http.Client{Timeout: time.Minute, Transport: &http.Transport{
		DialContext: func(ctx context.Context, _, _ string) (net.Conn, error) {
			return new(net.Dialer).DialContext(ctx, "unix", socket)
		},
	}}
	require.Eventually(t, func() bool {
		got, err := client.Get("http://opa/health?bundles")
		if err != nil {
			return false
		}
		_ = got.Body.Close()
		return got.StatusCode == http.StatusOK
	}, time.Minute, 50*time.Millisecond, "the server does not answer")
	return client
}

func asked(client *http.Client, text []byte) ([]byte, error) {
	question := append(append([]byte(`{"input":`), text...), '}')
	got, err := client.Post("http://opa/v1/data/driploop", "application/json", bytes.NewReader(question))
	if err != nil {
		return nil, err
	}
	defer got.Body.Close()
	return io.ReadAll(got.Body)
}
