package cli

import (
	"context"
	"errors"
	"fmt"
	"os/exec"
	"slices"
	"strconv"
	"strings"

	"homerun/schema"
)

// settings are the values of git config homerun.*, by name in lower case. The
// last one of a name counts, as everywhere in git.
func (a *app) settings(ctx context.Context) (map[string]string, error) {
	said, err := a.git(ctx, a.stand, "config", "-z", "--get-regexp", `^homerun\.`)
	var exit *exec.ExitError
	if errors.As(err, &exit) && exit.ExitCode() == 1 {
		return nil, nil // none is set
	}
	if err != nil {
		return nil, err
	}
	all := make(map[string]string)
	for entry := range strings.SplitSeq(strings.TrimSuffix(said, "\x00"), "\x00") {
		name, value, _ := strings.Cut(entry, "\n")
		all[strings.TrimPrefix(name, "homerun.")] = value
	}
	return all, nil
}

// prefer takes from git config what the command line does not say: homerun.format
// and homerun.most. A hook reports in its own way, and names have none.
func (o *lintFlags) prefer(ctx context.Context, a *app, given func(flag string) bool) error {
	if o.hook || o.asked() || given("format") && given("most") {
		return nil
	}
	all, err := a.settings(ctx)
	if err != nil {
		return err
	}
	if format, set := all["format"]; set && !given("format") {
		if !slices.Contains(lintFormats(), format) {
			return &usageError{"git config homerun.format: there is no format " + schema.Quote(format), didYouMean(format, lintFormats(), "the formats are "+strings.Join(lintFormats(), ", "))}
		}
		o.format = format
	}
	if most, set := all["most"]; set && !given("most") {
		n, err := strconv.Atoi(most)
		if err != nil || n < 0 {
			return &usageError{fmt.Sprintf("git config homerun.most: %s is no whole number", schema.Quote(most)), "such as 200; 0 shows all"}
		}
		o.most = n
	}
	return nil
}
