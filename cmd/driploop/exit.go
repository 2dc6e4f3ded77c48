package main

// The exit codes; they are part of the interface.
const (
	exitClean    = 0 // nothing at or above the gate
	exitBreach   = 1 // something at or above the gate
	exitUnusable = 2 // a record, a configuration, the command line or the output cannot be used
	exitFault    = 3 // a fault of the program

	exitInterrupted = 130 // stopped by the user, as shells count it
)

const exitHelp = `Exit codes:
  0  nothing at or above the gate
  1  something at or above the gate
  2  a record, a configuration, the command line or the output cannot be used
  3  a fault of the program
  130  stopped before the end`
