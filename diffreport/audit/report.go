package audit

import (
	"cmp"
	"maps"
	"slices"
	"time"

	"homerun/diffreport/history"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// A Report is what an audit of one plant found out.
type Report struct {
	About
	// Commits counts those of the period, Records those among them that touch
	// files of records, Line those of the line of first parents.
	Commits, Records, Line int
	// Begin and End are the outer commits of the line. Begin is the one before
	// the period where the period has one.
	Begin, End history.Revision

	Points  []Point
	Samples []Sample
	// Standing are the nonconformities that stood at some time on the line, in
	// the order in which they came.
	Standing []*Standing
	// Caught is how many were introduced and cleared on branches and never
	// reached the line.
	Caught int
	Rules  []RuleSum
	People []PersonSum

	Waivers    []WaiverLife
	Signatures Signatures
	Lost       []Lost
	Direct     []history.Revision
	Breaches   []Breach
	Untested   []Untested
	Repeated   []Repeated
	// Unknown are what can not be known from this repository, one sentence each.
	Unknown []string
	// Commands give the figures again.
	Commands []Command
}

// About says of what and with what a report was made.
type About struct {
	Plant string
	// Range is the period as the user named it, From and To its outer commits;
	// From is empty where it begins with the first commit.
	Range, From, To string
	// Today is the day by which expired waivers are told.
	Today unit.Date
	// By says by which standard and codes findings are judged.
	By By
	// Stated are the standard and codes, as the plant's record names them, with
	// the commits at which they changed.
	Stated []Edition
	// Tool is the version of the program, RuleSet what names its rules and their
	// digest, Rules how many there are.
	Tool, RuleSet string
	RuleCount     int
	// Several is set where the repository holds more than this plant.
	Several bool
	// Keys is set where somebody named the keys that signatures are checked with.
	Keys bool
	// Shallow, Partial and Replaced are forms of a repository that hides something.
	Shallow, Partial, Replaced bool
	// Branch is the branch whose line of first parents was followed; empty where the
	// last commit was named in another way.
	Branch string
	// Protected is set where the repository lets nothing new and wrong onto that
	// branch, as its settings stood when the report was made.
	Protected bool
	// Formerly are the earlier commits or tags that the last commit was held against,
	// Lost those of them that it does not lead to in full.
	Formerly []Earlier
	Lost     []Lost
}

// An Earlier is a commit or tag of the past: what it is called and its id, which is
// empty where it is not here any more.
type Earlier struct{ Name, Commit string }

// By is by which edition of standards and codes findings are judged.
type By uint8

// The choices.
const (
	ByTheDay By = iota // what the plant's record stated at each commit
	ByToday            // what it states at the last one
)

// String is the choice in words.
func (b By) String() string {
	if b == ByToday {
		return "the standard and codes that the last commit states"
	}
	return "the standard and codes that each commit states"
}

// An Edition is what the plant's record stated from a commit on.
type Edition struct {
	history.Revision
	Standard, FireCode string
}

// A RuleSum is what came and went of one rule.
type RuleSum struct {
	Rule string
	// Before stood when the period began, Opened and Cleared came and went, Stands
	// is what is left, Waived how many of these a waiver covers.
	Before, Opened, Cleared, Stands, Waived int
	// Median is the middle of the days that those cleared had stood, Oldest the
	// days of the oldest that still stands.
	Median, Oldest int
}

// A PersonSum is what one author introduced and cleared, on whatever branch.
type PersonSum struct {
	Name                        string
	Introduced, Cleared, Stands int
}

// A Command gives a figure of the report again. FILE in it stands for a file of keys.
type Command struct{ Figure, Command string }

// Report ends the audit. Head is the plant at the last commit, nil without one.
func (a *Audit) Report(about About, head *plant.Plant) *Report {
	r := &Report{
		About: about, Commits: a.custody.commits, Records: a.custody.records, Line: a.custody.line, Begin: a.line.begin, End: a.line.end,
		Samples: a.line.samples, Signatures: a.custody.signatures, Lost: about.Lost, Direct: a.custody.direct, Breaches: a.custody.breach,
		Untested: a.works.untested(head), Repeated: a.works.repeated(),
	}
	for _, s := range a.standing {
		s.close(a.line.begin, a.line.end)
	}
	r.Standing = sorted(a.standing)
	r.Caught = len(a.standing) - len(r.Standing)
	r.Points = a.line.points(a.options.Points, r.Standing)
	r.Waivers = a.waivers.report(r.Standing, about.Today)
	r.rules()
	r.people()
	r.Unknown = a.unknown(&about)
	r.Commands = commands(r, a.options.Points)
	return r
}

func (r *Report) rules() {
	sums := make(map[string]*RuleSum)
	cleared := make(map[string][]int)
	for _, s := range r.Standing {
		sum := sums[s.Rule]
		if sum == nil {
			sum = &RuleSum{Rule: s.Rule}
			sums[s.Rule] = sum
		}
		if s.Opened.ID == "" {
			sum.Before++
		} else {
			sum.Opened++
		}
		if !s.Stands() {
			sum.Cleared++
			cleared[s.Rule] = append(cleared[s.Rule], s.Days)
			continue
		}
		if s.Covered() != "" {
			sum.Waived++
		}
		sum.Stands++
		sum.Oldest = max(sum.Oldest, s.Days)
	}
	for _, name := range slices.Sorted(maps.Keys(sums)) {
		sums[name].Median = Median(cleared[name])
		r.Rules = append(r.Rules, *sums[name])
	}
}

// Median is the middle of numbers, the lower of two in the middle; 0 of none.
func Median(numbers []int) int {
	if len(numbers) == 0 {
		return 0
	}
	ordered := slices.Sorted(slices.Values(numbers))
	return ordered[(len(ordered)-1)/2]
}

func (r *Report) people() {
	sums := make(map[string]*PersonSum)
	of := func(name string) *PersonSum {
		if sums[name] == nil {
			sums[name] = &PersonSum{Name: name}
		}
		return sums[name]
	}
	for _, s := range r.Standing {
		if !s.Carried {
			p := of(s.Introduced.Author)
			p.Introduced++
			if s.Stands() {
				p.Stands++
			}
		}
		if !s.Stands() {
			of(s.ClearedBy.Author).Cleared++
		}
	}
	for _, p := range sums {
		r.People = append(r.People, *p)
	}
	slices.SortFunc(r.People, func(a, b PersonSum) int {
		return cmp.Or(cmp.Compare(b.Introduced, a.Introduced), cmp.Compare(b.Cleared, a.Cleared), cmp.Compare(a.Name, b.Name))
	})
}

// An AgeBand is how many findings are in one band of ages, in days.
type AgeBand struct {
	// Name says the band, From and To bound it; To is 0 for no end.
	Name             string
	From, To         int
	Standing, Closed int
}

// Ages counts findings by how long they have stood, or had when they were cleared.
func (r *Report) Ages() []AgeBand {
	bands := []AgeBand{
		{Name: "under 1 week", From: 0, To: 7},
		{Name: "1 week to 1 month", From: 7, To: 30},
		{Name: "1 to 3 months", From: 30, To: 91},
		{Name: "3 months to 1 year", From: 91, To: 365},
		{Name: "1 to 3 years", From: 365, To: 3 * 365},
		{Name: "3 years and more", From: 3 * 365},
	}
	for _, s := range r.Standing {
		for i := range bands {
			b := &bands[i]
			if s.Days < b.From || b.To > 0 && s.Days >= b.To {
				continue
			}
			if s.Stands() {
				b.Standing++
			} else {
				b.Closed++
			}
		}
	}
	return bands
}

// Day is a commit's day as a report writes it, by the commit's own clock.
func Day(r history.Revision) string {
	if r.Time.IsZero() {
		return ""
	}
	return r.Time.Format(time.DateOnly)
}
