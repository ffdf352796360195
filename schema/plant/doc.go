// Package plant is a whole cable plant: every record of a plant's files, found
// by its label, with its references followed, so that rules and reports walk
// from a port to the run behind it and on to the outlet instead of comparing
// texts.
//
// The model is the physical one. A panel or outlet port has two sides: the rear
// takes one run, the front one cord. An equipment port has only a front. A
// permanent link is what lies between two fronts; a channel adds the cords up
// to the equipment at both ends.
//
// A Plant is built once from files that have been read and is never changed.
// What does not fit together (a label twice, a reference to nothing, two runs
// on one port) is kept as a Problem or a Clash and never stops the building; a
// reference that could not be followed is nil, and no rule may judge by it.
package plant
