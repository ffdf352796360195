package cli

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"homerun/schema"
	"homerun/schema/console"
	"homerun/schema/vcs"
	"homerun/schema/weave"
)

// driverWords are what git puts in the place of the driver's arguments: the
// files of the base, of ours and of theirs, the size of the markers, the path,
// and the names of the three. A git that does not know the names leaves their
// words standing.
const driverWords = "%O %A %B %L %P %S %X %Y"

// ordinaryMarker is the size of markers outside a merge of common ancestors.
const ordinaryMarker = 7

func newMergeDriver(a *app) *cobra.Command {
	return &cobra.Command{
		Use:    "merge-driver BASE OURS THEIRS SIZE PATH [NAME...]",
		Hidden: true, // git's own way in, set by setup
		Short:  "merge one file of records, as git asks for it",
		Long: `Merge one file of records record by record and field by field, as git asks for
it: the result is written over OURS. Exit status 0 without conflicts, 1 with.
A file that can not be cut into records is merged by lines.`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) < 5 || len(args) > 8 {
				return &usageError{"merge-driver takes what git gives it", "write it with: git homerun setup"}
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.mergeDriver(cmd.Context(), newMergeJob(a, args))
		},
	}
}

// A mergeJob is one file that git wants merged.
type mergeJob struct {
	base, ours, theirs string
	path               string
	options            weave.Options
}

func newMergeJob(a *app, args []string) mergeJob {
	file := func(name string) string {
		if filepath.IsAbs(name) {
			return name
		}
		return filepath.Join(a.stand, name)
	}
	job := mergeJob{base: file(args[0]), ours: file(args[1]), theirs: file(args[2]), path: args[4]}
	// What is no number leaves the size that git has by itself.
	job.options.MarkerSize, _ = strconv.Atoi(args[3])
	for i, into := range []*string{&job.options.Base, &job.options.Ours, &job.options.Theirs} {
		if n := 5 + i; n < len(args) && !strings.HasPrefix(args[n], "%") {
			*into = args[n]
		}
	}
	return job
}

func (a *app) mergeDriver(ctx context.Context, job mergeJob) error {
	var texts weave.Texts
	for file, into := range map[string]*string{job.base: &texts.Base, job.ours: &texts.Ours, job.theirs: &texts.Theirs} {
		text, err := os.ReadFile(file)
		if err != nil {
			return notMerged(job, err)
		}
		*into = string(text)
	}
	job.options.Style = a.conflictStyle(ctx, job.options.MarkerSize)
	result, err := weave.Merge(texts, job.options)
	if unfit, ok := errors.AsType[*weave.UnfitError](err); ok {
		return a.mergeLines(ctx, job, unfit)
	}
	if err != nil {
		return notMerged(job, err)
	}
	if err := a.replaceOurs(job, result.Text); err != nil {
		return notMerged(job, err)
	}
	return a.tellConflicts(job, result.Conflicts)
}

// ownMode is the mode of git's temporary files.
const ownMode = 0o600

// replaceOurs writes the result where git looks for it. Git says in GIT_DIR where
// the repository is, where that can not be seen from the folder.
func (a *app) replaceOurs(job mergeJob, text string) error {
	aside := a.getenv("GIT_DIR")
	switch {
	case aside == "":
		aside = vcs.FolderAside(a.stand)
	case !filepath.IsAbs(aside):
		aside = filepath.Join(a.stand, aside)
	}
	return replaceFrom(aside, job.ours, []byte(text), ownMode)
}

// notMerged says that a file was left as one side has it. Git is told by the
// exit status, and some versions take every status for an ordinary conflict.
func notMerged(job mergeJob, err error) error {
	return fmt.Errorf("%s is not merged and holds one side alone: %w", schema.Printable(job.path), err)
}

// conflictStyle is what stands between markers: as merge.conflictStyle has it,
// and always with the base where git merges common ancestors, which it asks for
// with larger markers. What the ancestors had in common is needed then.
func (a *app) conflictStyle(ctx context.Context, size int) weave.Style {
	if size > ordinaryMarker {
		return weave.WithBase
	}
	style, err := a.git(ctx, a.stand, "config", "--get", "merge.conflictStyle")
	if style = strings.TrimSpace(style); err == nil && (style == "diff3" || style == "zdiff3") {
		return weave.WithBase
	}
	return weave.TwoSides
}

// tellConflicts names the places that people have to decide.
func (a *app) tellConflicts(job mergeJob, conflicts []weave.Conflict) error {
	if len(conflicts) == 0 {
		return nil
	}
	const most = 10
	page := console.New(a.Err, console.Options{Width: 1 << 16})
	for i, c := range conflicts {
		if i == most {
			page.Line(0, 2, console.Plain(fmt.Sprintf("%s: and %d more", job.path, len(conflicts)-most)))
			break
		}
		page.Line(0, 2, console.Plain(job.path+": "+c.String()+": "+whatBothDid(c)))
	}
	if err := page.Err(); err != nil {
		return err
	}
	return errObjected
}

func whatBothDid(c weave.Conflict) string {
	if c.Ours == "" && c.Theirs == "" {
		return "both sides changed it, each in another way"
	}
	return "on our side it " + c.Ours + ", on theirs it " + c.Theirs
}

// mergeLines merges a file as git does by itself.
func (a *app) mergeLines(ctx context.Context, job mergeJob, why *weave.UnfitError) error {
	if _, err := fmt.Fprintf(a.Err, "git homerun: %s: merged by lines, not by records: %s\n", schema.Printable(job.path), schema.Printable(why.Error())); err != nil {
		return err
	}
	args := []string{"merge-file", "-p", "-q"}
	if job.options.MarkerSize > 0 {
		args = append(args, fmt.Sprintf("--marker-size=%d", job.options.MarkerSize))
	}
	if job.options.Style == weave.WithBase {
		args = append(args, "--diff3")
	}
	for _, name := range [][2]string{{job.options.Ours, "ours"}, {job.options.Base, "base"}, {job.options.Theirs, "theirs"}} {
		args = append(args, "-L", cmp.Or(name[0], name[1]))
	}
	text, err := a.git(ctx, a.stand, append(args, "--", job.ours, job.base, job.theirs)...)
	exit, stopped := errors.AsType[*exec.ExitError](err)
	conflicts := stopped && exit.ExitCode() > 0 && exit.ExitCode() < 128
	if err != nil && !conflicts {
		return notMerged(job, err)
	}
	if err := a.replaceOurs(job, text); err != nil {
		return notMerged(job, err)
	}
	if conflicts {
		return errObjected
	}
	return nil
}
