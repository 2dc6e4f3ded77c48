// Package record reads installation records: one YAML file for one job, as a
// technician writes it at the bench. Decoding keeps the place of every key and
// value and reports all faults of a file at once.
//
// # The file
//
// A record is one YAML document in UTF-8, of 4 MiB at most, with these
// sections; Schema returns every key with its description, words and units.
//
//	driploop      version of the format: 1 (required)
//	job           number (required), title, yard, dates
//	vessel        system voltage (required), hull, propulsion, earthing, ...
//	practice      list of practice sets; default us-federal, workmanship
//	spaces        by id: parts of the boat and what it is like there
//	components    by id: batteries, devices, bars, loads; kind is required and
//	              decides which other keys a component may have
//	conductors    by id: from, to and role are required; route and ends
//	bundles       by id: what runs together
//	penetrations  by id: holes, what passes, what seals them
//	cases         by name: operating cases beside the usual ones
//	tests         list of measurements
//	waivers       list of breaches let stand
//	sign_off      by whom and when
//
// Ids are letters, digits, - and _. A terminal is written component.terminal;
// TerminalsOf says which a component has.
//
// # Values
//
// A value is Given, Unknown or Absent, and nothing is guessed. The word unknown
// may stand for any value, list or part, save those without which there is no
// circuit: driploop, kind of a component, from and to of a conductor, links and
// coils. Values with a dimension carry their unit (package quantity), dates are
// year-month-day, flags true or false. A key without a value is a fault: a
// record says unknown or leaves the key out.
//
// # Places
//
// Record.Places leads from a path such as conductors.P1.route[0].length to its
// key, or from that of a list item to the item. A value knows its own range. Lines and columns count
// from 1, columns in characters; a byte order mark counts as nothing.
//
// Anchors, aliases and merge keys work. A value that is an alias stands at the
// alias. What is within an aliased or merged mapping stands where it is written,
// since there it is put right; a fault in it is reported once.
//
// # Hostile files
//
// Size, nesting and the number of keys are bounded before parsing, what aliases
// expand to and the entries of a section after it. No text makes Decode panic.
package record
