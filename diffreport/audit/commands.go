package audit

import (
	"fmt"
	"strings"
)

// commands are what gives the figures of the report again. What a report has no
// figure of has no command.
func commands(r *Report, points Points) []Command {
	span := r.To
	if r.From != "" {
		span = r.From + ".." + r.To
	}
	list := []Command{{"the whole report, for programs", r.again(points) + " --format json " + span}}
	if r.By == ByTheDay {
		list = append(list, r.linting()...)
	}
	list = append(list,
		Command{"commits of the period", "git rev-list --count " + span},
		Command{"commits of the line of first parents", "git rev-list --count --first-parent " + span},
		Command{"commits made straight on that line, those that touch no records too", "git log --oneline --first-parent --no-merges --min-parents=1 " + span},
	)
	return append(append(list, r.signing(span)...), r.following()...)
}

// again is the command that made the report, without its form and period. It sets
// the day by which waivers are told to have expired.
func (r *Report) again(points Points) string {
	var b strings.Builder
	if !r.Today.IsZero() {
		b.WriteString("HOMERUN_TODAY=" + r.Today.String() + " ")
	}
	b.WriteString("git homerun audit" + r.plantFlag() + r.By.flag() + points.flag())
	for _, e := range r.Formerly {
		name := e.Commit
		if name == "" {
			name = quoted(e.Name)
		}
		b.WriteString(" --formerly " + name)
	}
	if r.Keys {
		b.WriteString(" --keys FILE")
	}
	return b.String()
}

// linting judges single commits, as the audit did. Judged by another day's
// standard they can only be audited.
func (r *Report) linting() []Command {
	list := []Command{{"what stands at the end; at another point with its commit", "git homerun lint --format json" + r.plantFlag() + " --at " + r.To}}
	for _, s := range r.Standing {
		if s.Introduced.ID != "" {
			return append(list, Command{
				"what a commit introduced, here the one of " + s.Record + " with " + s.Rule,
				"git homerun lint --format json --introduced" + r.plantFlag() + " --at " + s.Introduced.ID,
			})
		}
	}
	return list
}

// signing asks git for signatures. Its letters are told in git-log(1), at %G?.
func (r *Report) signing(span string) []Command {
	const letters = "signatures: N none, G and U good, B bad, E by an unknown key, X and Y expired, R revoked"
	show := " log --format='%H %G?' " + span
	if !r.Keys {
		return []Command{{letters, "git" + show}}
	}
	return []Command{
		{letters + "; of SSH, FILE being the allowed signers, U is by a key that was not allowed then", "git -c gpg.ssh.allowedSignersFile=FILE" + show},
		{"the same of OpenPGP, in an empty key ring", "gpg --import FILE; git" + show},
	}
}

// following are what was rewritten, and the life of a record.
func (r *Report) following() []Command {
	var list []Command
	for _, e := range r.Formerly {
		if e.Commit != "" {
			list = append(list, Command{"what " + e.Name + " leads to and this history does not", "git log --format='%H %s' " + e.Commit + " --not " + r.To})
		}
	}
	if len(r.Repeated) > 0 {
		most := &r.Repeated[0]
		list = append(list, Command{
			fmt.Sprintf("the life of a record, here of the one changed most often, %d times", most.Times),
			"git homerun history" + r.plantFlag() + " --at " + r.To + " " + quoted(most.Label),
		})
	}
	return list
}

// plantFlag names the plant where there are several, quoted for a shell.
func (r *Report) plantFlag() string {
	if !r.Several {
		return ""
	}
	return " --plant " + quoted(r.Plant)
}

// quoted is a text as a shell takes it for one word.
func quoted(text string) string { return "'" + strings.ReplaceAll(text, "'", `'\''`) + "'" }

func (b By) flag() string {
	if b == ByToday {
		return " --by today"
	}
	return ""
}

func (p Points) flag() string {
	switch p {
	case PointsTags:
		return " --each tag"
	case PointsMonths:
		return " --each month"
	case PointsAuto:
	}
	return ""
}
