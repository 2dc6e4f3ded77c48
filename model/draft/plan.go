package draft

import (
	"maps"
	"slices"
)

// plan is what a kind of job brings aboard.
type plan struct {
	id        string // of the new equipment
	component string // its kind
	purpose   string // of a load; empty for a source or a bank
	label     string
	class     string // of voltage drop
	control   bool   // worked by a reversing box with switches of its own
	source    bool   // gives current
	device    string // kind of its fuse or breaker
	duty      string // of that device
}

// plans returns the plans by kind of job. Which device is usual is common
// practice, no source.
func plans() map[string]plan {
	return map[string]plan{
		"windlass":      {id: "windlass", component: "motor", purpose: "windlass", label: "Windlass", class: "other", control: true, device: "breaker", duty: "branch"},
		"thruster":      {id: "thruster", component: "motor", purpose: "thruster", label: "Thruster", class: "other", control: true, device: "fuse", duty: "branch"},
		"pump":          {id: "pump", component: "pump", purpose: "bilge-pump", label: "Bilge pump", class: "critical", device: "fuse", duty: "branch"},
		"lights":        {id: "lamps", component: "lamp", purpose: "cabin-light", label: "Cabin lights", class: "other", device: "breaker", duty: "lighting"},
		"electronics":   {id: "electronics", component: "electronics", purpose: "navigation", label: "Navigation", class: "critical", device: "fuse", duty: "branch"},
		"refrigeration": {id: "refrigerator", component: "refrigerator", purpose: "refrigeration", label: "Refrigerator", class: "other", device: "breaker", duty: "branch"},
		"inverter-feed": {id: "inverter", component: "inverter", purpose: "inverter", label: "Inverter", class: "other", device: "fuse", duty: "branch"},
		"accessory":     {id: "accessory", component: "electronics", purpose: "other", label: "Accessory", class: "other", device: "fuse", duty: "branch"},
		"charger":       {id: "charger", component: "charger", label: "Charger", source: true, device: "fuse", duty: "charging"},
		"solar":         {id: "solar", component: "solar", label: "Solar panels", source: true, device: "fuse", duty: "charging"},
		"battery-bank":  {id: "boat-loads", component: "electronics", purpose: "other", label: "All loads of the boat", class: "other", device: "fuse", duty: "main"},
	}
}

// kinds lists the kinds of job that there is a plan for.
func kinds() []string { return slices.Sorted(maps.Keys(plans())) }
