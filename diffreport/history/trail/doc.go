// Package trail finds, in the objects of a git repository, the commits that can
// have changed what stands under a label, and as much of the plants around them
// as decides what happened: the steps that package history walks.
//
// It searches every version of every file at once for the label, so it needs no
// file to be named and sees an earlier life of the label wherever it was written.
// A commit where the files that hold the label are the same as before costs
// nothing; where their blocks differ, plants are built of the blocks that differ
// and of those that name the label. Whatever such an excerpt can not decide
// surely (a label given twice, hardware known again by what hangs on it, a length
// that a test measured) is decided by whole plants.
//
// Steps are equal in what they tell to those with whole plants at every commit.
// The package reads objects in this process and only of ordinary repositories;
// for others the caller has to build whole plants.
package trail
