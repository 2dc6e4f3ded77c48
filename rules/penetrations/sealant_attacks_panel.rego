# METADATA
# title: Sealant that attacks the plastic under it
# description: >-
#   Solvent and plasticiser of the compound work into the plastic. Windows and plastic fittings craze, go brittle and
#   crack, often long after the job, and the seal goes with them.
# schemas:
#   - input: schema.facts
# custom:
#   id: penetrations/sealant-attacks-panel
#   severity: notice
#   subject: penetrations
#   applies: every fitting bedded in polysulphide or polyurethane
#   needs: [touches_known]
#   decides: [compound]
#   says: "bedded in {compound}, which attacks {plastic}"
#   remedy: "Take the fitting off and bed it in neutral silicone or butyl, or record that the maker of the compound allows {plastic} (maker_allows)."
#   sources:
#     - {set: workmanship, source: sealant-guides, clause: "", asks: "no polysulphide or polyurethane on acrylic, polycarbonate, ABS or PVC, unless its maker allows it", trust: secondary}
#   related: [penetrations/sealant-out-of-place, penetrations/unbedded]
#   since: 0.1.0
package driploop.rules.penetrations.sealant_attacks_panel

# General boating literature, reported alike for both families.
attacked := {
	"polysulphide": {"acrylic", "polycarbonate", "abs", "pvc"},
	"polyurethane": {"acrylic", "polycarbonate", "abs", "pvc"},
}

excludes contains id if {
	some id, penetration in input.penetrations
	compound := penetration.compound
	not attacked[compound]
}

applies contains id if {
	some id, penetration in input.penetrations
	attacked[penetration.compound]
}

breach contains {"subject": id, "figures": {"compound": penetration.compound, "plastic": plastic}, "limit": {}} if {
	some id, penetration in input.penetrations
	some plastic in penetration.touches
	plastic in attacked[penetration.compound]
	not plastic in penetration.maker_allows
}
