# METADATA
# title: Cable of no accepted standard
# description: >-
#   Insulation made for houses or cars can soften in oil, swell in water or burn on by itself. On a boat it fails unseen, behind
#   linings and under floors.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/wrong-cable-type
#   severity: warning
#   subject: conductors
#   applies: every conductor but bonding ones and those that 33 CFR 183.430(b) exempts
#   needs: [standard]
#   asks: [exposed_mm]
#   says: "marked {standard}, which is none of the standards that are accepted"
#   remedy: "Replace it by cable marked UL 1426, or SAE J1127 or J1128 with insulation to SAE J378."
#   mends: ["standard: ul-1426"]
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.430(a)", asks: "under 50 V, conductors to SAE J1127 or J1128 with insulation to SAE J378, or those of 183.435", trust: read}
#     - {set: us-federal, source: 33-cfr-183, clause: "183.435(a)", asks: "UL 1426 boat cable, IEEE 45 cable, moisture-resistant and flame-retardant wire of NFPA 70 article 310, and certain flexible cords", trust: read}
#   since: 0.1.0
package driploop.rules.conductors.wrong_cable_type

# 33 CFR 183.430(a), 183.435(a), editions by 183.5. Letters of wire of NFPA 70 and
# further cords as the issuer's guideline names them; secondary.
accepted := {
	"ul-1426", "sae-j1127", "sae-j1128", "ieee-45",
	"thw", "tw", "thwn", "xhhw", "mtw",
	"so", "sto", "st", "sjo", "sjt", "sjto",
	"s", "se", "seo", "sje", "sjeo", "sjoo", "sjtoo", "soo",
}

# 33 CFR 183.430(b); unlike 183.425(g) it exempts no cranking conductors.
exempt := {"communication", "navigation", "resistance"}

pigtail_mm := 177.8

applies contains id if {
	some id, conductor in input.conductors
	conductor.role != "bonding"
	not conductor.duty in exempt
}

other contains id if {
	some id, conductor in input.conductors
	standard := conductor.standard
	not standard in accepted
}

asks contains {"subject": id, "fact": "exposed_mm"} if {
	some id in other
	input.conductors[id].pigtail
}

breach contains {"subject": id, "figures": {"standard": conductor.standard}, "limit": {}} if {
	some id, conductor in input.conductors
	id in other
	not conductor.pigtail
}

breach contains {"subject": id, "figures": {"standard": conductor.standard}, "limit": {}} if {
	some id, conductor in input.conductors
	id in other
	conductor.pigtail
	conductor.exposed_mm >= pigtail_mm
}
