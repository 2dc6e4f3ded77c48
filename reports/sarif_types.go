package reports

// The objects of SARIF 2.1.0 (OASIS) that a run needs, named as the standard
// names them.

// sarifRun is what follows the results of a run: what they refer to.
type sarifRun struct {
	Tool        sarifTool         `json:"tool"`
	Invocations []sarifInvocation `json:"invocations"`
	Artifacts   []sarifFile       `json:"artifacts,omitempty"`
	Taxonomies  []sarifComponent  `json:"taxonomies,omitempty"`
	Properties  sarifRunMore      `json:"properties"`
}

type sarifRunMore struct {
	Rules   string `json:"rulesDigest"`
	Caution string `json:"caution"`
}

type sarifTool struct {
	Driver sarifComponent `json:"driver"`
}

// sarifComponent is the program, or a document as a taxonomy.
type sarifComponent struct {
	Name             string           `json:"name"`
	Organization     string           `json:"organization,omitempty"`
	Version          string           `json:"version,omitempty"`
	ShortDescription *sarifText       `json:"shortDescription,omitempty"`
	FullDescription  *sarifText       `json:"fullDescription,omitempty"`
	Rules            []sarifRule      `json:"rules,omitempty"`
	Taxa             []sarifTaxon     `json:"taxa,omitempty"`
	Supported        []sarifReference `json:"supportedTaxonomies,omitempty"`
	Properties       *sarifForce      `json:"properties,omitempty"`
}

type sarifForce struct {
	Force string `json:"force"`
}

type sarifTaxon struct {
	ID               string    `json:"id"`
	ShortDescription sarifText `json:"shortDescription"`
}

// sarifReference points at a taxonomy of the run.
type sarifReference struct {
	Name  string `json:"name"`
	Index int    `json:"index"`
}

type sarifRule struct {
	ID               string          `json:"id"`
	Name             string          `json:"name"`
	ShortDescription sarifText       `json:"shortDescription"`
	FullDescription  sarifText       `json:"fullDescription"`
	Help             sarifText       `json:"help"`
	Default          sarifDefault    `json:"defaultConfiguration"`
	Relationships    []sarifRelation `json:"relationships,omitempty"`
	Properties       sarifRuleMore   `json:"properties"`
}

type sarifRuleMore struct {
	Severity string   `json:"severity"`
	Problem  string   `json:"problem.severity"`
	Tags     []string `json:"tags"`
}

type sarifDefault struct {
	Level string  `json:"level"`
	Rank  float64 `json:"rank"`
}

type sarifRelation struct {
	Target sarifTarget `json:"target"`
	Kinds  []string    `json:"kinds"`
}

// sarifTarget points at a taxon.
type sarifTarget struct {
	ID            string         `json:"id"`
	Index         int            `json:"index"`
	ToolComponent sarifReference `json:"toolComponent"`
}

type sarifText struct {
	Text     string `json:"text"`
	Markdown string `json:"markdown,omitempty"`
}

type sarifInvocation struct {
	Successful    bool                `json:"executionSuccessful"`
	EndTimeUTC    string              `json:"endTimeUtc,omitempty"`
	Notifications []sarifNotification `json:"toolExecutionNotifications,omitempty"`
}

type sarifNotification struct {
	Level     string          `json:"level"`
	Message   sarifText       `json:"message"`
	Locations []sarifLocation `json:"locations,omitempty"`
}

type sarifFile struct {
	Location sarifArtifact     `json:"location"`
	Roles    []string          `json:"roles"`
	Hashes   map[string]string `json:"hashes,omitempty"`
}

type sarifArtifact struct {
	URI         string     `json:"uri,omitempty"`
	BaseID      string     `json:"uriBaseId,omitempty"`
	Index       *int       `json:"index,omitempty"`
	Description *sarifText `json:"description,omitempty"`
}

type sarifResult struct {
	RuleID       string             `json:"ruleId"`
	RuleIndex    int                `json:"ruleIndex"`
	Kind         string             `json:"kind"`
	Level        string             `json:"level"`
	Rank         *float64           `json:"rank,omitempty"`
	Message      sarifText          `json:"message"`
	Locations    []sarifLocation    `json:"locations"`
	Related      []sarifLocation    `json:"relatedLocations,omitempty"`
	Fingerprints map[string]string  `json:"partialFingerprints,omitempty"`
	Suppressions []sarifSuppression `json:"suppressions,omitempty"`
	Taxa         []sarifTarget      `json:"taxa,omitempty"`
	Properties   *sarifResultMore   `json:"properties,omitempty"`
}

// sarifResultMore is what a verdict says beyond the words of SARIF.
type sarifResultMore struct {
	Severity string            `json:"severity"`
	Outcome  string            `json:"outcome"`
	Job      string            `json:"job,omitempty"`
	Figures  map[string]string `json:"figures,omitempty"`
	Limit    map[string]string `json:"limit,omitempty"`
	Missing  []string          `json:"missing,omitempty"`
	Remedy   string            `json:"remedy,omitempty"`
}

type sarifSuppression struct {
	Kind          string         `json:"kind"`
	Status        string         `json:"status"`
	Justification string         `json:"justification"`
	Location      *sarifLocation `json:"location,omitempty"`
}

type sarifLocation struct {
	ID       *int           `json:"id,omitempty"`
	Message  *sarifText     `json:"message,omitempty"`
	Physical *sarifPhysical `json:"physicalLocation,omitempty"`
	Logical  []sarifLogical `json:"logicalLocations,omitempty"`
}

type sarifPhysical struct {
	Artifact sarifArtifact `json:"artifactLocation"`
	Region   *sarifRegion  `json:"region,omitempty"`
	Context  *sarifRegion  `json:"contextRegion,omitempty"`
}

type sarifRegion struct {
	StartLine   int        `json:"startLine"`
	StartColumn int        `json:"startColumn,omitempty"`
	EndLine     int        `json:"endLine,omitempty"`
	EndColumn   int        `json:"endColumn,omitempty"`
	Snippet     *sarifText `json:"snippet,omitempty"`
}

type sarifLogical struct {
	Name string `json:"fullyQualifiedName"`
	Kind string `json:"kind"`
}
