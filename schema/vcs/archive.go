package vcs

import (
	"errors"
	"fmt"

	"homerun/schema/vcs/pack"
)

// MaxArchive is how many bytes of objects, as they are stored but inflated, are
// held for searching: some forty times what a history of 3,000 commits over
// 20,000 runs takes.
const MaxArchive = 192 << 20

// Archive opens all objects of the repository for searching. Error: ErrUnfit
// where objects come from elsewhere, are replaced or are of a form that is not
// read in this process, and ErrTooLarge above MaxArchive; the caller then has to
// read history commit by commit.
func (r *Repo) Archive() (*pack.Store, error) {
	if r.form.Reader != ReaderGoGit {
		return nil, fmt.Errorf("%s: %w", r.place.gitDir, ErrUnfit)
	}
	s, err := pack.Open(r.place.objects, MaxArchive)
	switch {
	case errors.Is(err, pack.ErrTooLarge):
		return nil, fmt.Errorf("%s: %w", r.place.objects, ErrTooLarge)
	case errors.Is(err, pack.ErrForm):
		return nil, fmt.Errorf("%s: %w: %w", r.place.objects, ErrUnfit, err)
	}
	return s, err
}
