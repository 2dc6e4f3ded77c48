# METADATA
# title: Output of a charging source without a device near it
# description: >-
#   Chafed through, the output of an alternator or charger is fed from both ends: by the machine and by the battery behind it.
#   Unless something opens near the source, the fault burns on as long as the engine or the shore supply runs.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/charging-source-unprotected
#   severity: warning
#   subject: conductors
#   applies: every conductor on the output of an alternator, generator, charger or solar array that is not self-limiting
#   needs: [output_bare]
#   asks: [output_mm]
#   decides: [output_limits]
#   says: "{what}"
#   remedy: "Fit a fuse or breaker in the output within 1.8 m of the source, or at it, for the source's greatest output; isolate the battery before work."
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.460(b)", asks: "a fuse or breaker in each ungrounded output conductor of an alternator or generator, self-limiting ones aside", trust: read}
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "protection at each source, internally regulated self-limiting alternators aside", trust: secondary}
#     - {set: international, source: iso-13297, clause: "12.3", asks: "protection inside a charging source or within 1.8 m of it, by its greatest output, self-limiting ones aside", trust: secondary}
#   related: [protection/unprotected, protection/generator-device-high]
#   since: 0.1.0
package driploop.rules.protection.charging_source_unprotected

limits := {"international": {"output_mm": 1800}}

# 33 CFR 183.460(b) names alternators and generators only.
machines := {"alternator", "generator"}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.output_of == ""
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.output_limits == true
}

excludes contains {"subject": id, "set": "us-federal"} if {
	some id, conductor in input.conductors
	not conductor.output_of in machines
}

concerned contains id if {
	some id, conductor in input.conductors
	conductor.output_of != ""
	conductor.output_limits == false
}

applies contains {"subject": id, "set": set} if {
	some id in concerned
	some set in ["us-voluntary", "international"]
}

applies contains {"subject": id, "set": "us-federal"} if {
	some id in concerned
	input.conductors[id].output_of in machines
}

asks contains {"subject": id, "set": "international", "fact": "output_mm"} if {
	some id, conductor in input.conductors
	conductor.output_bare == false
}

breach contains {
	"subject": id,
	"figures": {"what": concat("", ["no fuse or breaker lies on the output of the ", conductor.output_of])},
	"limit": {},
} if {
	some id, conductor in input.conductors
	conductor.output_bare == true
}

breach contains {
	"subject": id,
	"set": "international",
	"figures": {"what": concat("", ["the first fuse or breaker is too far along the conductors from the ", conductor.output_of]), "output_mm": conductor.output_mm},
	"limit": {"output_mm": limits.international.output_mm},
} if {
	some id, conductor in input.conductors
	conductor.output_bare == false
	conductor.output_mm > limits.international.output_mm
}
