package vcs

import "time"

// File modes as git writes them in trees and in the index.
const (
	ModeFile       uint32 = 0o100644
	ModeExecutable uint32 = 0o100755
	ModeSymlink    uint32 = 0o120000
	ModeSubmodule  uint32 = 0o160000
)

// Entry is one path of a commit, the index or the work tree.
type Entry struct {
	// Path is relative to the top of the work tree, with slashes; it may hold any byte but NUL.
	Path string
	// ID is the object id in lower-case hexadecimal, 40 or 64 digits; "" in the work tree, which has none yet.
	ID string
	// Mode is git's file mode. In the work tree 0 marks what is neither file, link nor submodule, such as a pipe.
	Mode uint32
	// Stage is 0, or 1 to 3 (base, ours, theirs) for a path of the index that a merge left unresolved.
	Stage int
	// IntentToAdd marks a path of the index that "git add -N" announced: it has no content and is in no commit.
	IntentToAdd bool
	// Size is the length in bytes of a file of the work tree, and -1 where it is not known.
	Size int64
}

// Regular reports whether the entry is an ordinary file, executable or not.
func (e Entry) Regular() bool { return e.Mode == ModeFile || e.Mode == ModeExecutable }

// Blob is the content of one file version.
type Blob struct {
	ID   string
	Data []byte
}

// Person is who wrote or entered a commit, as the commit says it; nothing vouches for it. When carries the
// offset from UTC that was written down.
type Person struct {
	Name, Email string
	When        time.Time
}

// Commit is one commit. Text is UTF-8 as far as the commit declared its encoding truly.
type Commit struct {
	// ID, Tree and Parents are object ids. Parents is empty for a first commit and for a Boundary.
	ID, Tree string
	Parents  []string
	// Boundary marks a commit whose parents exist but are not in this clone, because it is shallow.
	Boundary          bool
	Author, Committer Person
	// Signed says that the commit carries a signature, good or not, and SignedWith of which form it says to be.
	Signed     bool
	SignedWith SignatureForm
	// Subject is the first paragraph on one line; Body is the rest without the blank lines around it.
	Subject, Body string
	// Changed lists what differs from each parent, by parent, then path. Only Log with Changes fills it.
	Changed []Delta
}

// Delta is one path that differs between a commit and one of its parents. A renamed file is two deltas.
type Delta struct {
	Path string
	// Before and After are object ids, "" where the path does not exist on that side. The modes are 0 there.
	Before, After         string
	BeforeMode, AfterMode uint32
	// Parent is the place of the parent in Commit.Parents; 0 for a commit without parents, where all is new.
	Parent int
}

// Form says what sort of repository this is, and with that how complete an answer from it can be.
type Form struct {
	// ObjectFormat is "sha1" or "sha256".
	ObjectFormat string
	// Reader is the reader that answers first.
	Reader Reader
	// Bare repositories have no work tree.
	Bare bool
	// Shallow clones end at boundary commits: what came before is not here.
	Shallow bool
	// Partial clones lack objects until they are fetched.
	Partial bool
	// Replaced says that refs/replace changes what some ids stand for, and that git honours it.
	Replaced bool
}
