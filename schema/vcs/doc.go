// Package vcs reads a git repository as plain values: files of a commit, of the index and of the work tree, blobs
// by their id, and the commits that lie between. Nothing here knows what a record is.
//
// Two readers stand behind one small interface. One reads objects and index in this process (go-git) and serves
// ordinary repositories; the other asks git's own plumbing and serves every form that git can read. Which of them
// answers is decided by what the repository is, is invisible to the caller, and one contract test holds them equal.
// Git itself is always asked first, once, where the repository lies and whether the user may read it, so a
// repository owned by somebody else is refused in git's own words. Which commits a history has, and in which order, is
// always git's own word.
//
// Whoever reads a whole history (Changes, Versions, Pour, after Warm also single objects) reads it, in ordinary
// repositories, from the packs in memory: as git keeps it, versions as changes of each other. Where that fails in the
// least, git is asked for all of it.
//
// The package only ever reads. It starts nothing that the repository names: no hook, filter, text conversion,
// file system monitor or external diff, and no fetch of missing objects unless Options.Missing allows it. It takes
// folder, environment and time zone from its caller and asks the process for none of them. Go-git's types never
// leave it. It needs git 2.31 or later.
package vcs
