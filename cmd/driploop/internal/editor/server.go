// Package editor speaks the Language Server Protocol: what is wrong in a record
// as it is typed, what its circuit computes to, what could stand where the
// cursor is, and what would clear a breach.
package editor

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"sync"

	"github.com/sourcegraph/jsonrpc2"

	"driploop/model/circuit"
	"driploop/model/record"
	"driploop/model/remedy"
	"driploop/model/verdict"
)

// Program is what the server asks of the program around it.
type Program struct {
	Version string
	// Judge judges a record that could be read, by the settings of its yard.
	Judge func(path string, text []byte, r *record.Record, a *circuit.Analysis) (*verdict.Record, error)
	// Page is the page of a rule, in Markdown.
	Page func(rule string) (string, error)
	// Cures seeks what would clear a breach of a text.
	Cures func(path string, text []byte, breach *verdict.Verdict) ([]remedy.Cure, error)
}

// Serve answers one editor until it leaves or the streams end.
func Serve(in io.Reader, out io.Writer, p Program) error {
	s := &server{program: p, documents: map[string]*document{}}
	stream := jsonrpc2.NewBufferedStream(duplex{in, out}, jsonrpc2.VSCodeObjectCodec{})
	conn := jsonrpc2.NewConn(context.Background(), stream, jsonrpc2.HandlerWithError(s.handle))
	<-conn.DisconnectNotify()
	s.work.Wait()
	if s.left() {
		return nil
	}
	return errors.New("the editor went away without saying so")
}

// duplex is a stream of two ways.
type duplex struct {
	io.Reader
	io.Writer
}

// Close closes nothing: the streams are the process's own.
func (duplex) Close() error { return nil }

// server is the state of one session.
type server struct {
	program Program
	work    sync.WaitGroup

	diagnosing sync.Mutex // one text at a time: of those that wait only the newest is judged

	mu        sync.Mutex
	conn      *jsonrpc2.Conn // known with the first message
	documents map[string]*document
	shutdown  bool
}

// tell sends the editor what it did not ask for.
func (s *server) tell(method string, params any) error {
	s.mu.Lock()
	conn := s.conn
	s.mu.Unlock()
	return conn.Notify(context.Background(), method, params)
}

func (s *server) left() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.shutdown
}

// handle answers one message. Messages come in order; what takes longer goes on
// beside.
func (s *server) handle(_ context.Context, conn *jsonrpc2.Conn, r *jsonrpc2.Request) (any, error) {
	s.mu.Lock()
	s.conn = conn
	s.mu.Unlock()
	switch r.Method {
	case "initialize":
		return s.greeting(), nil
	case "initialized", "$/cancelRequest", "$/setTrace", "workspace/didChangeConfiguration", "textDocument/didSave":
		return nil, nil
	case "shutdown":
		s.mu.Lock()
		s.shutdown = true
		s.mu.Unlock()
		return nil, nil
	case "exit":
		return nil, conn.Close()
	case "textDocument/didOpen":
		return with(r, func(p didOpenParams) (any, error) {
			s.put(p.TextDocument.URI, p.TextDocument.Version, p.TextDocument.Text)
			return nil, nil
		})
	case "textDocument/didChange":
		return with(r, func(p didChangeParams) (any, error) { return nil, s.change(p) })
	case "textDocument/didClose":
		return with(r, func(p documentParams) (any, error) { return nil, s.close(p.TextDocument.URI) })
	case "textDocument/hover":
		return asked(s, r, func(d *document, p positionParams) (any, error) { return s.hover(d, p.Position) })
	case "textDocument/completion":
		return asked(s, r, func(d *document, p positionParams) (any, error) { return d.complete(p.Position), nil })
	case "textDocument/definition":
		return asked(s, r, func(d *document, p positionParams) (any, error) { return d.definition(p.Position), nil })
	case "textDocument/references":
		return asked(s, r, func(d *document, p positionParams) (any, error) { return d.references(p.Position), nil })
	case "textDocument/documentSymbol":
		return with(r, func(p documentParams) (any, error) {
			d, err := s.document(p.TextDocument.URI)
			if err != nil {
				return nil, err
			}
			return d.symbols(), nil
		})
	case "textDocument/codeAction":
		return with(r, func(p codeActionParams) (any, error) {
			d, err := s.document(p.TextDocument.URI)
			if err != nil {
				return nil, err
			}
			return s.actions(d, p.Range)
		})
	}
	return nil, &jsonrpc2.Error{Code: jsonrpc2.CodeMethodNotFound, Message: "driploop does not answer " + r.Method}
}

// with reads the parameters of a message.
func with[P any](r *jsonrpc2.Request, answer func(P) (any, error)) (any, error) {
	var p P
	if r.Params == nil {
		return nil, &jsonrpc2.Error{Code: jsonrpc2.CodeInvalidParams, Message: r.Method + " needs parameters"}
	}
	if err := json.Unmarshal(*r.Params, &p); err != nil {
		return nil, &jsonrpc2.Error{Code: jsonrpc2.CodeInvalidParams, Message: err.Error()}
	}
	return answer(p)
}

// asked answers a question about a place in a document.
func asked(s *server, r *jsonrpc2.Request, answer func(*document, positionParams) (any, error)) (any, error) {
	return with(r, func(p positionParams) (any, error) {
		d, err := s.document(p.TextDocument.URI)
		if err != nil {
			return nil, err
		}
		return answer(d, p)
	})
}

// greeting tells what the server can do.
func (s *server) greeting() any {
	const incremental = 2
	return map[string]any{
		"serverInfo": map[string]string{"name": "driploop", "version": s.program.Version},
		"capabilities": map[string]any{
			"positionEncoding":       "utf-16",
			"textDocumentSync":       map[string]any{"openClose": true, "change": incremental},
			"hoverProvider":          true,
			"completionProvider":     map[string]any{"triggerCharacters": []string{".", ":", " ", ",", "{"}},
			"definitionProvider":     true,
			"referencesProvider":     true,
			"documentSymbolProvider": true,
			"codeActionProvider":     map[string]any{"codeActionKinds": []string{"quickfix"}},
		},
	}
}

func (s *server) document(uri string) (*document, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	d := s.documents[uri]
	if d == nil {
		return nil, &jsonrpc2.Error{Code: jsonrpc2.CodeInvalidParams, Message: uri + " is not open"}
	}
	return d, nil
}

func (s *server) change(p didChangeParams) error {
	d, err := s.document(p.TextDocument.URI)
	if err != nil {
		return err
	}
	text := d.text
	for _, c := range p.ContentChanges {
		if c.Range == nil {
			text = c.Text
		} else {
			text = changed(text, *c.Range, c.Text)
		}
	}
	s.put(p.TextDocument.URI, p.TextDocument.Version, text)
	return nil
}

// put takes a new text and judges it beside.
func (s *server) put(uri string, version int, text string) {
	d := newDocument(uri, version, text)
	s.mu.Lock()
	if old := s.documents[uri]; old != nil {
		d.good = old.settled()
	}
	s.documents[uri] = d
	s.mu.Unlock()
	s.work.Go(func() { s.diagnose(d) })
}

// current tells whether no newer text has come.
func (s *server) current(d *document) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.documents[d.uri] == d
}

func (s *server) close(uri string) error {
	s.mu.Lock()
	delete(s.documents, uri)
	s.mu.Unlock()
	return s.tell("textDocument/publishDiagnostics", publishDiagnostics{URI: uri, Diagnostics: []diagnostic{}})
}
