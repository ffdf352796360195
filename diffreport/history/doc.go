// Package history tells the life of one record: every commit that changed it,
// in the words of the trade, found by its label and not by the line it stands
// on.
//
// It walks from the newest commit to the oldest and follows the record through
// relabellings, stated or found, and through moves between files and bundles.
// Formatting is no event. A label that was given up and used again has several
// lives, which are told apart. A merge is an event only where its record is
// that of none of its parents; where it took the record from one side, that side
// tells what happened, and what the other did to it is not part of its life.
//
// The package is handed commits with their plants. It reads no repository and
// checks no signature; it repeats what it was told about both.
package history
