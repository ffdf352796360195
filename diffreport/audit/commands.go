package audit

import "strings"

// commands are what gives the figures of the report again, one for each kind.
func commands(r *Report, points Points) []Command {
	span := r.To
	if r.From != "" {
		span = r.From + ".." + r.To
	}
	var again strings.Builder
	again.WriteString("git homerun audit" + r.plantFlag() + r.By.flag() + points.flag())
	for _, name := range r.Formerly {
		again.WriteString(" --formerly " + quoted(name))
	}
	if r.Keys {
		again.WriteString(" --keys FILE")
	}
	list := []Command{{"the whole report, for programs", again.String() + " --format json " + span}}
	if r.By == ByTheDay {
		list = append(list, Command{"what stood at a commit", "git homerun lint --format json" + r.plantFlag() + " --at COMMIT"},
			Command{"what a commit introduced", "git homerun lint --introduced" + r.plantFlag() + " --at COMMIT"})
	}
	return append(list,
		Command{"commits of the period", "git rev-list --count " + span},
		Command{"commits of the line of first parents", "git rev-list --count --first-parent " + span},
		Command{"commits made straight on that line, those that touch no records too", "git log --oneline --first-parent --no-merges " + span},
		Command{"signatures", "git log --format='%H %G? %GK %an' " + span},
		Command{"what an earlier commit or tag leads to and this one does not", "git log --oneline EARLIER --not " + r.To},
		Command{"the life of a record, with each change", "git homerun history" + r.plantFlag() + " --at " + r.To + " LABEL"},
	)
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
