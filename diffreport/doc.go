// Package diffreport says what a change of the records means on site: which
// records differ between two plants, into which class of work each difference
// falls, and in which order a crew can carry it out.
//
// It compares records by their fields, never by their text: formatting, the
// order of blocks and the file they stand in do not matter. A bundle's cable
// and route count for each of its runs. A panel or room with another label is
// one relabelling, and what refers to it follows without being listed.
//
// An Order is the plan of that work, proved by carrying it out on a model of
// the port sides: after every step no side holds two cables, and at the end the
// model is the later plant.
//
// The package takes two plants and gives values. It reads no files, runs no git
// and knows nothing of the linter: what a change introduces or clears is joined
// by the caller.
package diffreport
