package circuit

import "driploop/model/record"

// class is what a component is to the network.
type class uint8

const (
	loadClass    class = iota // draws current between pos and neg
	batteryClass              // stored energy between pos and neg
	chargeClass               // alternator, charger, solar, generator: a regulated source
	deviceClass               // fuse or breaker between line and load
	switchClass               // opened by hand
	relayClass                // links closed by command
	joinClass                 // connector: passes current on
	nodeClass                 // busbar: all studs are one node
	groundClass               // ground point: one node, tied to the hull or engine
)

// classOf tells what a component is to the network. A kind that is not named
// here draws current, as every other piece of equipment does.
func classOf(c *record.Component) class {
	switch c.Kind.V {
	case "battery":
		return batteryClass
	case "alternator", "charger", "solar", "generator":
		return chargeClass
	case "fuse", "breaker":
		return deviceClass
	case "switch":
		return switchClass
	case "relay", "controller":
		return relayClass
	case "connector":
		return joinClass
	case "busbar":
		return nodeClass
	case "ground":
		return groundClass
	}
	return loadClass
}

// ends returns the terminals that a component of the class has current flow
// between where it declares no links.
func (c class) ends() (first, second string) {
	switch c {
	case deviceClass:
		return "line", "load"
	case switchClass, joinClass:
		return "in", "out"
	}
	return "pos", "neg"
}
