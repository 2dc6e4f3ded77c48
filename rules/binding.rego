# METADATA
# title: Which laws bind the vessel
# description: >-
#   Decides from the vessel whether a source of force "law" binds it. A source without an entry is one that the record
#   cannot decide: the facts are missing, or the law depends on more than a record holds.
# schemas:
#   - input: schema.facts
package driploop.binding

# 33 CFR 183.401(a): a petrol engine for propulsion, mechanical power or
# generating electricity, outboards aside.
binds["33-cfr-183"] := input.vessel.petrol

# 46 CFR: each part by the service that the vessel is in.
binds[part] := bound if {
	some part, service in services
	bound := input.vessel.service == service
}

services := {
	"46-cfr-28": "fishing",
	"46-cfr-143": "towing",
	"46-cfr-169": "sailing-school",
	"46-cfr-182": "small-passenger",
	"46-cfr-183": "small-passenger",
}

# A recreational vessel is under none of the parts of 46 CFR.
binds[part] := false if {
	some part in {"46-cfr-58", "46-cfr-111", "46-cfr-129"}
	input.vessel.service == "recreational"
}

# The United Kingdom's code binds commercial vessels only.
binds["uk-small-vessel-code"] := false if input.vessel.service == "recreational"
