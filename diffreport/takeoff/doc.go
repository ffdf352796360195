// Package takeoff counts what the cabling of a plant is made of, or what a
// change needs: metres of cable by type with waste and reels, terminations,
// cords, hardware, labels and fire-stops.
//
// It takes a plant and the changes that led to it and gives values, each with
// the parts of its sum. What states no length or type is named beside the sum
// and never left out in silence. Waste and reel are assumptions of whoever
// counts: the values say which were used.
//
// The package knows no prices and no makes. Text and JSON of its values are
// beside them.
package takeoff
