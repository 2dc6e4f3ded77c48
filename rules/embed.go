package rules

import "embed"

// shipped holds every file of the practice: rules with their tests and
// examples, the binding of laws, the registers and the schema of the facts.
//
//go:embed */*.rego */*.yaml *.rego *.yaml schema/facts.json
var shipped embed.FS
