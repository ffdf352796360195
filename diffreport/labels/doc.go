// Package labels says which labels a change or a whole plant needs: what is on
// each, how often it is printed and where it is put on.
//
// It takes what an order already decided (Order.Labels, Strips and Firestops)
// and adds what follows from it: which end of a cable or pathway and which side
// of a fire-stop each label is for, and the ports on a strip.
// The labels of a whole plant are those of the order that builds it from
// nothing, so that there is one answer and not two; only the runs that stay in
// place out of use come to it.
//
// A label states only what the thing is, never what it is connected to: that
// would be wrong after the next move. Where it goes is said beside it.
//
// The package is pure: no files, no clock, no drawing. Package sheet draws.
package labels
