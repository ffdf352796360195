// Package cli is the command line: flags in, an engine's call, a report out.
//
// Each command is one file. None of them decides anything about cabling or
// about git; they join the rooms that do. What the tool says about itself, its
// usage and its failures, is in voice.go. Exit status: 0 nothing to object to,
// 1 nonconformities or a change that can not be executed, 2 wrong usage, 3 the
// job could not be done.
package cli
