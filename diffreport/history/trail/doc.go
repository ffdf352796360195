// Package trail finds, in the objects of a git repository, the commits that can
// have changed what stands under a label, and as much of the plants around them
// as decides what happened: the steps that package history walks.
//
// It reads once how every version of every file differs from another, by the changes
// that git keeps in its packs where it can, and remembers in a register which texts in
// quotes came and went with each version. So no file has to be named, and an
// earlier life of a label is found wherever it was written. The register can be
// kept in a folder of git's own; it is written whole or not at all, checked by a
// digest, ignored when it is damaged, and may be removed at any time: what it
// answers is where to look, and the records themselves are read from git.
//
// At a commit where blocks differ that state the label, plants are built of the
// blocks that differ and of those that bear on them. What such an excerpt does not
// decide surely (a label given twice, a length that a test may have measured) is
// decided by whole plants. Steps are equal in what they tell to those with whole
// plants at every commit; only of what came to a port or space, a record whose own
// label is given twice may be told otherwise.
package trail
