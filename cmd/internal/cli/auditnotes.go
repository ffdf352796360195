package cli

import (
	"fmt"
	"strings"

	"homerun/diffreport/audit"
)

// evidenceNotes tell a third person what an archive is and how to check it. The
// commands stand on lines of their own, and are run by a test.
func evidenceNotes(about *evidenceAbout, reports []*audit.Report) string {
	var again, fetch strings.Builder
	for _, r := range reports {
		fmt.Fprintf(&again, "    (cd plant && %s)\n", strings.ReplaceAll(r.Commands[0].Command, "--keys FILE", "--keys ../keys/1"))
	}
	// A clone leaves out what no branch leads to.
	for _, refs := range []string{evidenceFormerly + "*", "refs/audited/*"} {
		fmt.Fprintf(&fetch, "    git -C plant fetch --quiet ../%s '%s:%s'\n", "commits.bundle", refs, refs)
	}
	return fmt.Sprintf(`Audit of cable records

This archive holds
  records/        the records as commit %[1]s has them
  commits.bundle  that commit and all before it, for git
  report/         the audit of %[2]s, made on %[3]s, in four forms
  about.json      what the report was made with
  keys/           the keys that signatures were checked with, where any were named
  SHA256SUMS      the digest of every other file

To check all of it with homerun
  git homerun audit --verify FILE --digest DIGEST

To check it with other programs, unpack the archive and in its folder run:
    sha256sum --check --strict --quiet SHA256SUMS
  says nothing where every file is as it was listed;
    sha256sum SHA256SUMS
  gives the digest that was told when the archive was written;
    git clone --quiet --branch audited commits.bundle plant
%[5]s    git -C plant rev-parse HEAD
  gives %[1]s;
    git -C plant fsck --full --no-dangling --no-progress
  says nothing where every commit and file is whole;
    diff --recursive records plant
  names only what is in plant alone, which are files that are no records;
%[4]s  gives the figures of report/audit.json. How the period was named when the
  report was made, and the branch, can not be seen from the commits.

A commit's id follows from everything that it holds and from all commits before
it, so whoever knows the id knows the rest.
`, about.To, rangeOf(about), about.Today, again.String(), fetch.String())
}
