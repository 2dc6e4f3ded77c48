# METADATA
# title: No fuse or breaker at all
# description: >-
#   A battery can drive thousands of amperes into a chafed or crushed conductor. With nothing on the way that opens, the
#   conductor glows along its whole length within seconds and sets fire to all that it touches; nobody can cut it off in time.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/unprotected
#   severity: danger
#   subject: conductors
#   applies: every ungrounded conductor, feeds of cranking motors aside; for 33 CFR 183 not ignition secondary and current-controlling resistance conductors either
#   needs: [bare]
#   asks: [exposed_mm]
#   decides: [ungrounded]
#   says: "{source} can drive current through it to {end} with no fuse or breaker on the way"
#   remedy: "Fit a fuse, or a manually reset trip-free breaker, at {source}, rated for the smallest conductor behind it; isolate {source} before work."
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.455(a)", asks: "a fuse or a manually reset trip-free breaker in each ungrounded current-carrying conductor; 183.455(e) exempts some, pigtails with less than 7 in exposed among them", trust: read}
#     - {set: us-federal, source: 33-cfr-183, clause: "183.460(a)", asks: "a fuse or breaker in each ungrounded conductor from a battery, but for the feed of a cranking motor; boats built before 1 August 1985 may have a disconnect switch instead", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.380(a), (c)", asks: "protection in each ungrounded conductor, those of control circuits included", trust: read}
#     - {set: us-inspected, source: 46-cfr-111, clause: "111.15-25(a)", asks: "an overload device in each battery conductor, engine-cranking batteries aside", trust: read}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.365(b), (c)", asks: "each circuit protected against overload and short circuit, and each ungrounded conductor where its circuit begins", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.666(d), 169.667(c), 169.668(j)", asks: "protection of generators, of each ungrounded conductor where it joins its source, and of the battery lead at the battery", trust: read}
#     - {set: us-inspected, source: 46-cfr-111, clause: "111.50-3(f)", asks: "a device in each ungrounded conductor", trust: read}
#     - {set: uk, source: uk-small-vessel-code, clause: "8.2.4", asks: "protection of all circuits against overload and short circuit, but for the supply of a starter or an electric steering motor", trust: read-part}
#     - {set: eu, source: eu-2013-53, clause: "I.A 5.3", asks: "circuits stay safe when overloaded, engine starting circuits aside", trust: secondary}
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "protection of each ungrounded conductor at its source, starter conductors aside", trust: secondary}
#     - {set: international, source: iso-10133, clause: "8", asks: "overcurrent protection of positive conductors", trust: unverified}
#   related: [protection/device-too-far, protection/device-oversized]
#   since: 0.1.0
package driploop.rules.protection.unprotected

# What each set lets go without a device; the lists differ. 33 CFR 183.455(e),
# 183.460(a); 46 CFR 111.15-25(a); small vessel code 8.2.4 (UK); 2013/53/EU I.A 5.3.
# A record has to say so: nothing is exempt by its silence.
exempt := {
	"us-federal": {"cranking", "ignition-secondary", "resistance"},
	"us-inspected": {"cranking"},
	"uk": {"cranking"},
	"eu": {"cranking"},
	"us-voluntary": {"cranking"},
	"international": {"cranking"},
}

# 33 CFR 183.455(e) alone frees pigtails: less than 7 in exposed.
pigtail_mm := 177.8

excludes contains id if {
	some id, conductor in input.conductors
	conductor.ungrounded == false
}

excludes contains {"subject": id, "set": set} if {
	some id, conductor in input.conductors
	some set, duties in exempt
	conductor.duty in duties
}

applies contains {"subject": id, "set": set} if {
	some id, conductor in input.conductors
	conductor.ungrounded == true
	some set, duties in exempt
	not conductor.duty in duties
}

asks contains {"subject": id, "set": "us-federal", "fact": "exposed_mm"} if {
	some id, conductor in input.conductors
	conductor.bare == true
	conductor.pigtail
}

# 183.460(a) lets a boat built before 1 August 1985 have a disconnect switch
# instead; 183.455(a) lets no conductor go for that.
older if {
	input.vessel.built_on != ""
	input.vessel.built_on < "1985-08-01"
}

clause(on_battery) := "183.460(a)" if {
	on_battery
	not older
}

clause(on_battery) := "183.455(a)" if not on_battery

clause(on_battery) := "183.455(a)" if {
	on_battery
	older
}

breach contains {
	"subject": id,
	"set": "us-federal",
	"clause": clause(conductor.on_battery),
	"figures": {"source": conductor.bare_from, "end": conductor.bare_via},
	"limit": {},
} if {
	some id, conductor in input.conductors
	conductor.bare == true
	not conductor.pigtail
}

breach contains {
	"subject": id,
	"set": "us-federal",
	"clause": "183.455(a)",
	"figures": {"source": conductor.bare_from, "end": conductor.bare_via},
	"limit": {},
} if {
	some id, conductor in input.conductors
	conductor.bare == true
	conductor.pigtail
	conductor.exposed_mm >= pigtail_mm
}

breach contains {
	"subject": id,
	"set": set,
	"figures": {"source": conductor.bare_from, "end": conductor.bare_via},
	"limit": {},
} if {
	some id, conductor in input.conductors
	conductor.bare == true
	some set in ["us-inspected", "uk", "eu", "us-voluntary", "international"]
}
