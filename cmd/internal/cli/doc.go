// Package cli is the command line: flags in, an engine's call, a report out.
//
// Each command is one file. None of them decides anything about cabling or
// about git; they join the rooms that do. What the tool says about itself, its
// usage and its failures, is in voice.go; what it says to the shell is in
// exitstatus.go.
package cli
