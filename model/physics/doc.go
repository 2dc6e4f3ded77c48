// Package physics holds what rules need beside conductors and circuits: hydrogen
// from batteries, metals in contact, the field of a conductor at a compass, the
// filling of a conduit, and weight as a force. It holds no limit of a standard.
package physics

// StandardGravity turns a mass in kg into its weight in N.
// Source: NIST SP 811 (2008) B.8, 9.80665 m/s², exact.
const StandardGravity = 9.80665

// Weight returns the force in N with which a mass in kg weighs.
func Weight(kg float64) float64 { return kg * StandardGravity }
