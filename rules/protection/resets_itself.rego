# METADATA
# title: Breaker that comes back on by itself, or can be held on
# description: >-
#   A breaker that resets itself feeds the fault again and again, and each time the conductor and the place of the fault get
#   hotter, until something burns. One that is not trip-free can be held closed on a fault by the hand on its lever.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/resets-itself
#   severity: danger
#   subject: devices
#   applies: every breaker
#   needs: [reset]
#   asks: [trip_free]
#   says: "{how}"
#   remedy: "Fit a breaker that is trip-free and stays open until it is reset by hand, or a fuse; isolate before work."
#   mends: ["trip_free: true", "reset: manual"]
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.455(a)", asks: "a breaker is manually reset and trip-free", trust: read}
#     - {set: us-federal, source: 33-cfr-183, clause: "183.460(a)", asks: "the same for a breaker in a battery's conductor", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.380(m)", asks: "breakers are of manual reset", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.670", asks: "breakers are of manual reset", trust: read}
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "breakers are trip-free and of manual reset; protectors that reset themselves stand only inside motors", trust: secondary}
#   related: [protection/unprotected]
#   since: 0.1.0
package driploop.rules.protection.resets_itself

applies contains id if {
	some id, device in input.devices
	device.kind == "breaker"
}

# 46 CFR asks for manual reset alone.
trip_free_asked := ["us-federal", "us-voluntary"]

asks contains {"subject": id, "set": set, "fact": "trip_free"} if {
	some id, device in input.devices
	device.kind == "breaker"
	some set in trip_free_asked
}

breach contains {"subject": id, "figures": {"how": "resets itself after a trip"}, "limit": {}} if {
	some id, device in input.devices
	device.reset == "automatic"
}

breach contains {"subject": id, "set": set, "figures": {"how": "is not trip-free: it can be held closed on a fault"}, "limit": {}} if {
	some id, device in input.devices
	device.trip_free == false
	some set in trip_free_asked
}
