// Package unit holds the quantities of a cable record as exact integers: lengths,
// temperatures, powers, periods, frequencies, losses, currents, angles, levels,
// dates and conductor sizes, each with a strict parser and a printer.
//
// A quantity is text with a number and a unit, as in "41.5 m" or "136 ft". What
// cannot be kept exactly is refused and never rounded, so that a record means
// the same in metric and in US units, and no verdict hangs on a rounding.
//
// The package is pure. It assumes nothing of its input, never panics on it, and
// never does floating-point arithmetic while it reads or prints; the float
// accessors (Metres, Celsius, ...) stand for formulas alone.
package unit
