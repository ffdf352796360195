package cli

import (
	"context"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"homerun/diffreport/audit"
	"homerun/diffreport/render"
)

type auditFlags struct {
	by, points     string
	formerly, keys []string
	format, output string
	bundle, verify string
	digest         string
	most           int
}

func auditFormats() []string { return []string{"text", "json", "html", "sheet"} }

func newAudit(a *app) *cobra.Command {
	var o auditFlags
	cmd := &cobra.Command{
		Use:   "audit [BASE..HEAD | REV]",
		Short: "how the records kept to the rules over time",
		Long: `Tell how the records kept to the rules over time, and how far their history can
be relied on: nonconformities at each tag or month, who introduced and who
cleared them and how long they stood; waivers granted, used and expired; commits
without a good signature or made straight on the line of first parents; work on
cables without a later test; records changed again and again; and what can not
be known.

Without a range all commits up to HEAD are read. Each commit is judged by the
standard and codes that it states itself, with --by today by those of the last
one, and its waivers by its own day, as lint --at does it.

What was found out about each commit is kept in git's own folder, below homerun,
so that the next audit is quicker; it may be deleted at any time.

--formerly names a commit or tag of an earlier audit: what it leads to and the
last commit does not was rewritten or lost.

--bundle writes one file for a third person: the records, the commits that led
to them, the report and a list of digests, all of which ordinary programs can
check too. --verify checks such a file, in any folder, and names the first thing
that differs; it makes the report again from the commits in the file.`,
		Args: func(_ *cobra.Command, args []string) error {
			switch {
			case len(args) > 1:
				return &usageError{"audit takes one range of commits", "write BASE..HEAD"}
			case len(args) == 1 && o.verify != "":
				return &usageError{"--verify takes the range from the file", "leave the range out"}
			case o.output != "" && (o.bundle != "" || o.verify != ""):
				return &usageError{"--output is for a report alone, and a bundle holds it in every form", "leave --output out, or write the report by a command of its own"}
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if o.verify != "" {
				return a.verifyEvidence(cmd.Context(), o)
			}
			return a.audit(cmd.Context(), strings.Join(args, ""), o)
		},
	}
	f := cmd.Flags()
	f.StringVar(&o.by, "by", "day", "judge by the standard and codes that each commit states (day), or the last one (today)")
	f.StringVar(&o.points, "each", "auto", "count at each tag, month, or auto: at tags where the line has any")
	f.StringArrayVar(&o.formerly, "formerly", nil, "a commit or tag of an earlier audit that this history should lead to; may be given again")
	f.StringArrayVar(&o.keys, "keys", nil, "a file of keys that are trusted: OpenPGP public keys, or SSH allowed signers; may be given again")
	f.StringVar(&o.format, "format", "text", strings.Join(auditFormats(), ", "))
	f.StringVarP(&o.output, "output", "o", "", "write to a file, whole or not at all, instead of standard output")
	f.IntVar(&o.most, "most", 40, "list at most so many of each kind as text or html; 0 lists all")
	f.StringVar(&o.bundle, "bundle", "", "write everything that the report rests on to one file that can be checked elsewhere")
	f.StringVar(&o.verify, "verify", "", "check such a file, and make its report again")
	f.StringVar(&o.digest, "digest", "", "with --verify: the digest that was told when the file was written")
	return cmd
}

func (o *auditFlags) settle() (opts auditOptions, err error) {
	switch o.by {
	case "day":
	case "today":
		opts.by = audit.ByToday
	default:
		return opts, &usageError{"--by takes day or today", "day judges each commit by what it states itself, today all of them by the last one"}
	}
	switch o.points {
	case "auto":
	case "tag":
		opts.points = audit.PointsTags
	case "month":
		opts.points = audit.PointsMonths
	default:
		return opts, &usageError{"--each takes tag, month or auto", "such as --each month"}
	}
	if o.most < 0 {
		return opts, &usageError{"--most is below zero", "0 lists all"}
	}
	for _, name := range o.formerly {
		opts.formerly = append(opts.formerly, earlier{name, name})
	}
	return opts, nil
}

func (a *app) audit(ctx context.Context, rng string, o auditFlags) error {
	opts, err := o.settle()
	if err != nil {
		return err
	}
	write, err := a.auditWriter(ctx, o)
	if err != nil {
		return err
	}
	src, err := a.open(ctx)
	if err != nil {
		return err
	}
	defer src.close()
	opts.rng, opts.name = rng, rng
	for _, file := range o.keys {
		opts.keys = append(opts.keys, a.userPath(file))
	}
	reports, err := src.audits(ctx, opts)
	if err != nil {
		return err
	}
	if o.bundle != "" {
		return a.bundleEvidence(ctx, src, reports, opts, o)
	}
	return a.handOver(ctx, o.output, func(w io.Writer) error { return write(w, reports) })
}

// auditWriter chooses what writes audits.
func (a *app) auditWriter(ctx context.Context, o auditFlags) (func(io.Writer, []*audit.Report) error, error) {
	switch o.format {
	case "text":
		page := a.page(ctx, a.Out)
		page.Colour = page.Colour && o.output == ""
		return func(w io.Writer, reports []*audit.Report) error {
			return render.AuditText(w, reports, render.AuditOptions{Options: page, Most: o.most})
		}, nil
	case "json":
		return render.AuditJSON, nil
	case "html":
		return func(w io.Writer, reports []*audit.Report) error {
			return render.AuditPage(w, reports, o.most)
		}, nil
	case "sheet":
		if o.output == "" && isTerminal(a.Out) {
			return nil, &usageError{"a spreadsheet is no text for a terminal", "write it to a file, such as --output audit.xlsx"}
		}
		return render.AuditWorkbook, nil
	}
	return nil, noFormat(o.format, auditFormats())
}
