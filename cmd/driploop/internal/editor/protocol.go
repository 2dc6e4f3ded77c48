package editor

// The parts of the Language Server Protocol 3.17 that the server speaks, by the
// names that the protocol gives them.

type position struct {
	Line      int `json:"line"`      // from 0
	Character int `json:"character"` // UTF-16 units, from 0
}

type textRange struct {
	Start position `json:"start"`
	End   position `json:"end"`
}

type location struct {
	URI   string    `json:"uri"`
	Range textRange `json:"range"`
}

type textDocument struct {
	URI     string `json:"uri"`
	Version int    `json:"version"`
	Text    string `json:"text"`
}

type didOpenParams struct {
	TextDocument textDocument `json:"textDocument"`
}

type didChangeParams struct {
	TextDocument   textDocument `json:"textDocument"`
	ContentChanges []struct {
		Range *textRange `json:"range"`
		Text  string     `json:"text"`
	} `json:"contentChanges"`
}

type documentParams struct {
	TextDocument textDocument `json:"textDocument"`
}

type positionParams struct {
	TextDocument textDocument `json:"textDocument"`
	Position     position     `json:"position"`
}

type codeActionParams struct {
	TextDocument textDocument `json:"textDocument"`
	Range        textRange    `json:"range"`
}

// severities of diagnostics
const (
	severityError   = 1
	severityWarning = 2
	severityInfo    = 3
	severityHint    = 4
)

type diagnostic struct {
	Range    textRange `json:"range"`
	Severity int       `json:"severity"`
	Code     string    `json:"code,omitempty"`
	Source   string    `json:"source"`
	Message  string    `json:"message"`
	Related  []related `json:"relatedInformation,omitempty"`
}

type related struct {
	Location location `json:"location"`
	Message  string   `json:"message"`
}

type publishDiagnostics struct {
	URI         string       `json:"uri"`
	Version     int          `json:"version"`
	Diagnostics []diagnostic `json:"diagnostics"`
}

type markup struct {
	Kind  string `json:"kind"`
	Value string `json:"value"`
}

type hover struct {
	Contents markup    `json:"contents"`
	Range    textRange `json:"range"`
}

type completionItem struct {
	Label         string  `json:"label"`
	Kind          int     `json:"kind"`
	Detail        string  `json:"detail,omitempty"`
	Documentation *markup `json:"documentation,omitempty"`
	InsertText    string  `json:"insertText,omitempty"`
	SortText      string  `json:"sortText,omitempty"`
}

// kinds of completion items
const (
	itemProperty  = 10
	itemValue     = 12
	itemReference = 18
)

type documentSymbol struct {
	Name           string           `json:"name"`
	Detail         string           `json:"detail,omitempty"`
	Kind           int              `json:"kind"`
	Range          textRange        `json:"range"`
	SelectionRange textRange        `json:"selectionRange"`
	Children       []documentSymbol `json:"children,omitempty"`
}

// kinds of symbols
const (
	symbolModule = 2
	symbolObject = 19
)

type textEdit struct {
	Range   textRange `json:"range"`
	NewText string    `json:"newText"`
}

type workspaceEdit struct {
	Changes map[string][]textEdit `json:"changes"`
}

type codeAction struct {
	Title       string         `json:"title"`
	Kind        string         `json:"kind"`
	Diagnostics []diagnostic   `json:"diagnostics,omitempty"`
	Edit        *workspaceEdit `json:"edit,omitempty"`
}
