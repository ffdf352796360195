// Package pack searches the objects of a git repository without unpacking them.
//
// A pack holds most versions of a file as what differs from another version:
// pieces copied from it, and new text. A search that knows where a text stands in
// the one version knows it for the other but for the new text and the seams, so
// every version of every file is searched in the time that it takes to inflate
// the differences, which is a small part of unpacking them. Where a text straddles
// seams the bytes around them are followed to where they come from.
//
// The package reads packs (index version 2, SHA-1) and loose objects of one
// objects folder, and only blobs and trees. It follows no alternates, replaces
// nothing and checks no object's name: what git itself would refuse is an error or
// is not found, and the caller is meant to ask git then. It never writes.
package pack
