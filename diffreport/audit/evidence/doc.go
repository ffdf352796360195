// Package evidence packs an audit into one file that a third person can check,
// and unpacks such a file with distrust.
//
// The file is a zip archive: the records, the commits as a git bundle, the report
// in several forms, what it was made with, and a list of SHA-256 digests in the form
// that the program sha256sum reads. So everything in it can be checked without this
// program too.
//
// The package only knows names and bytes: whether the commits hold together and
// whether they give the report is for its caller to find out. Opening takes nothing
// on trust: sizes and the number of files are bounded, and a name that leads out of
// the archive, comes twice or is not in the list is an error that says so. Files are
// unpacked one by one, so that what an archive costs in memory is its largest file
// and never all of it.
package evidence
