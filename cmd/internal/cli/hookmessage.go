package cli

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"homerun/diffreport"
)

// orderTrailer is the trailer that names the work a commit orders.
const orderTrailer = "Order"

// commitMessage adds to a commit's message what the commit orders, by class of
// work. A commit that changes no records keeps the message that it has.
func (a *app) commitMessage(ctx context.Context, file string) error {
	if !filepath.IsAbs(file) {
		file = filepath.Join(a.stand, file)
	}
	text, err := os.ReadFile(file)
	if err != nil {
		return fmt.Errorf("the message can not be read: %w", err)
	}
	src, err := a.open(ctx)
	if err != nil {
		return err
	}
	defer src.close()
	src.all = true
	work, err := a.staged(ctx, src, string(text))
	if err != nil || work == "" {
		return err
	}
	return a.addTrailer(ctx, src, file, work)
}

// addTrailer lets git put the trailer where trailers go. Git is asked outside of
// the repository, since it runs a command for every trailer whose settings name
// one; what starts a comment is the one thing there that it has to know.
func (a *app) addTrailer(ctx context.Context, src *source, file, work string) error {
	var args []string
	comment, set, err := src.repo.Config(ctx, "core.commentChar")
	if err != nil {
		return err
	}
	if set {
		args = append(args, "-c", "core.commentChar="+comment)
	}
	args = append(args, "interpret-trailers", "--in-place", "--if-exists", "replace", "--trailer", orderTrailer+": "+work, file)
	_, err = a.gitWith(ctx, a.stand, a.outside(), args...)
	return err
}

// staged counts the changes of the next commit: "2 moves, 1 removal". Git does
// not tell the hook that a commit is to take another's place; it is known by a
// message with the same first line, and then the commit before that counts.
func (a *app) staged(ctx context.Context, src *source, message string) (string, error) {
	head, err := src.index(ctx)
	if err != nil {
		return "", err
	}
	rev := "HEAD"
	last, err := src.repo.Resolve(ctx, rev)
	switch {
	case isNoCommit(err):
	case err != nil:
		return "", err
	case firstLine(message) == last.Subject && len(last.Parents) > 0:
		rev = last.Parents[0]
	}
	base, err := a.baseline(ctx, src, rev)
	if err != nil {
		return "", err
	}
	var all []diffreport.Change
	sp := span{base: base, head: head}
	for _, pair := range sp.pairs() {
		all = append(all, diffreport.Compare(pair[0], pair[1], diffreport.Options{})...)
	}
	return strings.Join(diffreport.Count(all).Words(), ", "), nil
}

func firstLine(message string) string {
	line, _, _ := strings.Cut(strings.TrimLeft(message, "\n"), "\n")
	return strings.TrimSpace(line)
}
