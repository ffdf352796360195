package vcs

import (
	"errors"
	"fmt"
	"strings"
)

// The ways in which reading a repository fails. Errors of this package wrap one of them where it applies and keep
// the sentence that git itself printed.
var (
	// ErrNoGit says that the git program cannot be started.
	ErrNoGit = errors.New("git cannot be started")
	// ErrNotRepository says that the folder lies in no git repository.
	ErrNotRepository = errors.New("not a git repository")
	// ErrUnsafe says that git refuses the repository because another user owns it (safe.directory).
	ErrUnsafe = errors.New("repository owned by another user")
	// ErrNoWorktree says that the repository has no work tree here: it is bare, or the user stands inside .git.
	ErrNoWorktree = errors.New("no work tree here")
	// ErrNoCommit says that HEAD names a branch without a commit.
	ErrNoCommit = errors.New("no commit yet")
	// ErrUnknownRevision says that a revision names no commit of this repository.
	ErrUnknownRevision = errors.New("unknown revision")
	// ErrShallow says that something may lie before the commits at which this clone was cut off.
	ErrShallow = errors.New("in this shallow clone")
	// ErrMissingObject says that an object is not in this repository.
	ErrMissingObject = errors.New("object not in this repository")
	// ErrNotBlob says that an object is no file content.
	ErrNotBlob = errors.New("object is not a file")
	// ErrTooLarge says that something is above the package's limit for it.
	ErrTooLarge = errors.New("too large")
	// ErrOutside says that a path leads out of the work tree.
	ErrOutside = errors.New("path leaves the work tree")
	// ErrNotFile says that a path of the work tree is neither a file nor a link to one.
	ErrNotFile = errors.New("not a file")
	// ErrDamaged says that the index does not match its own checksum.
	ErrDamaged = errors.New("damaged")
	// ErrUnreadable says that folders of the work tree could not be listed.
	ErrUnreadable = errors.New("cannot be read")
	// ErrNoMergeBase says that two commits share no history.
	ErrNoMergeBase = errors.New("no common history")
	// ErrUnfit says that the reader the caller insisted on cannot read this form of repository.
	ErrUnfit = errors.New("reader does not fit this repository")
)

// Limits on what an untrusted repository may make the process hold. Above them the error is ErrTooLarge.
const (
	// MaxBlob is the largest file content that is read, in bytes.
	MaxBlob = 16 << 20
	// MaxEntries is the largest number of files listed from a commit, the index or the work tree.
	MaxEntries = 1_000_000
	// maxDepth is the deepest nesting of folders followed in a commit.
	maxDepth = 512
	// maxIndex is the largest index file decoded in this process, in bytes.
	maxIndex = 512 << 20
	// maxAnswer is the longest short answer taken from git, and the longest complaint kept, in bytes.
	maxAnswer = 1 << 20
	// maxRevision is the longest revision a user may name, in bytes.
	maxRevision = 4096
)

// gitError is a git command that failed: which, with what exit status, and what it said.
type gitError struct {
	command string
	status  int
	said    string
	kind    error
}

// Error gives git's own sentence, with the command in front.
func (e *gitError) Error() string {
	if e.said == "" {
		return fmt.Sprintf("git %s: exit status %d", e.command, e.status)
	}
	return fmt.Sprintf("git %s: %s", e.command, e.said)
}

// Unwrap gives the sentinel the failure belongs to, or nil.
func (e *gitError) Unwrap() error { return e.kind }

// kindOf finds the sentinel for a complaint of git. Children run with LC_ALL=C, so the words are git's English ones.
func kindOf(said string) error {
	for _, known := range []struct {
		words string
		kind  error
	}{
		{"detected dubious ownership", ErrUnsafe},
		{"unsafe repository", ErrUnsafe},
		{"not a git repository", ErrNotRepository},
		{"must be run in a work tree", ErrNoWorktree},
		{"promisor remote", ErrMissingObject},
		{"bad object", ErrMissingObject},
		{"unable to read", ErrMissingObject},
	} {
		if strings.Contains(said, known.words) {
			return known.kind
		}
	}
	return nil
}
