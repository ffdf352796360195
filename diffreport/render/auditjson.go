package render

import (
	"io"
	"time"

	"homerun/diffreport/audit"
	"homerun/diffreport/history"
	"homerun/schema/console"
)

// The names below are what other programs rely on: fields are added, never
// renamed or taken away. AUDIT.md tells what they state.
type auditDocument struct {
	Plant      string         `json:"plant"`
	Range      string         `json:"range"`
	Branch     string         `json:"branch"`
	Protected  bool           `json:"branch_protected"`
	From       string         `json:"from"`
	To         string         `json:"to"`
	Today      string         `json:"today"`
	JudgedBy   string         `json:"judged_by"`
	Stated     []editionJSON  `json:"stated"`
	Tool       string         `json:"tool"`
	RuleSet    string         `json:"rule_set"`
	Rules      int            `json:"rules"`
	Commits    int            `json:"commits"`
	Touching   int            `json:"commits_of_records"`
	Line       int            `json:"commits_of_the_line"`
	Points     []pointJSON    `json:"points"`
	Findings   []standingJSON `json:"findings"`
	Caught     int            `json:"caught_on_branches"`
	ByRule     []ruleSumJSON  `json:"by_rule"`
	Ages       []ageJSON      `json:"ages"`
	People     []personJSON   `json:"people"`
	Waivers    []waiverJSON   `json:"waivers"`
	Signatures map[string]int `json:"signatures"`
	Doubtful   []doubtfulJSON `json:"without_a_good_signature"`
	Lost       []lostJSON     `json:"rewritten"`
	Direct     []revisionJSON `json:"made_on_the_line"`
	Breaches   []breachJSON   `json:"against_the_rules_of_change"`
	Untested   []untestedJSON `json:"not_tested_since"`
	Repeated   []repeatedJSON `json:"changed_again_and_again"`
	Unknown    []string       `json:"unknown"`
	Commands   []commandJSON  `json:"commands"`
}

type revisionJSON struct {
	Commit    string `json:"commit"`
	Time      string `json:"time"`
	Author    string `json:"author"`
	Committer string `json:"committer"`
	Subject   string `json:"subject"`
}

type editionJSON struct {
	revisionJSON
	Standard string `json:"standard"`
	FireCode string `json:"fire_code"`
}

type pointJSON struct {
	Name          string          `json:"name"`
	Commit        string          `json:"commit"`
	Time          string          `json:"time"`
	Nonconformity int             `json:"nonconformity"`
	Observation   int             `json:"observation"`
	Waived        int             `json:"waived"`
	Opened        int             `json:"opened"`
	Cleared       int             `json:"cleared"`
	ByRule        []ruleCountJSON `json:"by_rule"`
}

type ruleCountJSON struct {
	Rule  string `json:"rule"`
	Count int    `json:"count"`
}

type standingJSON struct {
	Rule       string        `json:"rule"`
	Kind       string        `json:"kind"`
	Record     string        `json:"record"`
	Message    string        `json:"message"`
	Before     bool          `json:"before_the_period"`
	Introduced *revisionJSON `json:"introduced"`
	Opened     *revisionJSON `json:"opened"`
	ClearedBy  *revisionJSON `json:"cleared_by"`
	Cleared    *revisionJSON `json:"cleared"`
	Days       int           `json:"days"`
	WaivedDays int           `json:"waived_days"`
	Waiver     string        `json:"waiver"`
	Spells     []spellJSON   `json:"waived"`
}

type spellJSON struct {
	Waiver string        `json:"waiver"`
	From   revisionJSON  `json:"from"`
	To     *revisionJSON `json:"to"`
}

type ruleSumJSON struct {
	Rule    string `json:"rule"`
	Before  int    `json:"before"`
	Opened  int    `json:"opened"`
	Cleared int    `json:"cleared"`
	Stands  int    `json:"stands"`
	Waived  int    `json:"waived"`
	Median  int    `json:"median_days_to_clear"`
	Oldest  int    `json:"oldest_days"`
}

type ageJSON struct {
	Name    string `json:"name"`
	From    int    `json:"from_days"`
	To      int    `json:"to_days"`
	Stand   int    `json:"stand"`
	Cleared int    `json:"cleared"`
}

type personJSON struct {
	Author     string `json:"author"`
	Introduced int    `json:"introduced"`
	Cleared    int    `json:"cleared"`
	Stands     int    `json:"stands"`
}

type waiverJSON struct {
	Label     string             `json:"label"`
	Rule      string             `json:"rule"`
	Records   []string           `json:"records"`
	Reason    string             `json:"reason"`
	Granted   string             `json:"granted"`
	Expires   string             `json:"expires"`
	Expired   bool               `json:"expired"`
	Entered   *revisionJSON      `json:"entered"`
	Withdrawn *revisionJSON      `json:"withdrawn"`
	Changes   []waiverChangeJSON `json:"changes"`
	Findings  int                `json:"findings_covered"`
	Covers    int                `json:"covers"`
}

type waiverChangeJSON struct {
	revisionJSON
	Before   string   `json:"expires_before"`
	After    string   `json:"expires_after"`
	Added    []string `json:"added"`
	Dropped  []string `json:"dropped"`
	Reworded bool     `json:"reworded"`
}

type doubtfulJSON struct {
	revisionJSON
	Signature string `json:"signature"`
}

type lostJSON struct {
	Ref     string         `json:"ref"`
	Commit  string         `json:"commit"`
	Missing bool           `json:"missing"`
	Records int            `json:"commits_of_records"`
	Commits []revisionJSON `json:"commits"`
}

type breachJSON struct {
	revisionJSON
	Rule    string `json:"rule"`
	Kind    string `json:"kind"`
	Record  string `json:"record"`
	Message string `json:"message"`
}

type untestedJSON struct {
	Record       string       `json:"record"`
	Class        string       `json:"class"`
	Changed      revisionJSON `json:"changed"`
	Test         string       `json:"test"`
	Tested       string       `json:"tested"`
	EnteredSince bool         `json:"entered_since"`
}

type repeatedJSON struct {
	Kind   string       `json:"kind"`
	Record string       `json:"record"`
	Times  int          `json:"times"`
	First  revisionJSON `json:"first"`
	Last   revisionJSON `json:"last"`
}

type commandJSON struct {
	Figure  string `json:"figure"`
	Command string `json:"command"`
}

// AuditJSON writes a document for each plant, ended by a new line. The error is
// that of the writer.
func AuditJSON(w io.Writer, reports []*audit.Report) error {
	for _, r := range reports {
		if err := console.JSON(w, auditDocumentOf(r)); err != nil {
			return err
		}
	}
	return nil
}

func auditDocumentOf(r *audit.Report) auditDocument {
	d := auditDocument{
		Plant: r.Plant, Range: r.Range, Branch: r.Branch, Protected: r.Protected, From: r.From, To: r.To, Today: r.Today.String(), JudgedBy: byWord(r.By), Tool: r.Tool, RuleSet: r.RuleSet, Rules: r.RuleCount,
		Commits: r.Commits, Touching: r.Records, Line: r.Line, Caught: r.Caught, Unknown: texts(r.Unknown), Signatures: make(map[string]int),
		Points: each(r.Points, asPoint), Findings: each(r.Standing, asStanding), Waivers: each(r.Waivers, asWaiver), Direct: each(r.Direct, asRevision),
	}
	d.Stated = each(r.Stated, func(e audit.Edition) editionJSON { return editionJSON{asRevision(e.Revision), e.Standard, e.FireCode} })
	d.ByRule = each(r.Rules, func(s audit.RuleSum) ruleSumJSON {
		return ruleSumJSON{s.Rule, s.Before, s.Opened, s.Cleared, s.Stands, s.Waived, s.Median, s.Oldest}
	})
	d.Ages = each(r.Ages(), func(a audit.AgeBand) ageJSON { return ageJSON{a.Name, a.From, a.To, a.Standing, a.Closed} })
	d.People = each(r.People, func(p audit.PersonSum) personJSON { return personJSON{p.Name, p.Introduced, p.Cleared, p.Stands} })
	for state, n := range r.Signatures.Counts {
		d.Signatures[state.String()] = n
	}
	d.Doubtful = each(r.Signatures.Doubtful, func(c history.Revision) doubtfulJSON { return doubtfulJSON{asRevision(c), c.Signature.String()} })
	d.Lost = each(r.Lost, func(l audit.Lost) lostJSON {
		return lostJSON{l.Ref, l.Commit, l.Commit == "", l.Records, each(l.Commits, asRevision)}
	})
	d.Breaches = each(r.Breaches, func(b audit.Breach) breachJSON {
		return breachJSON{asRevision(b.At), b.Rule, b.Kind, b.Record, b.Message}
	})
	d.Untested = each(r.Untested, func(u audit.Untested) untestedJSON {
		return untestedJSON{u.Label, u.Class, asRevision(u.Changed), u.Test, u.Tested.String(), u.EnteredSince}
	})
	d.Repeated = each(r.Repeated, func(p audit.Repeated) repeatedJSON {
		return repeatedJSON{p.Kind, p.Label, p.Times, asRevision(p.First), asRevision(p.Last)}
	})
	d.Commands = each(r.Commands, func(c audit.Command) commandJSON { return commandJSON(c) })
	return d
}

func byWord(b audit.By) string {
	if b == audit.ByToday {
		return "today"
	}
	return "day"
}

func asRevision(r history.Revision) revisionJSON {
	return revisionJSON{r.ID, r.Time.Format(time.RFC3339), r.Author, r.Committer, r.Subject}
}

// maybe is a commit, or nothing where there is none.
func maybe(r history.Revision) *revisionJSON {
	if r.ID == "" {
		return nil
	}
	j := asRevision(r)
	return &j
}

func asPoint(p audit.Point) pointJSON {
	return pointJSON{
		p.Name, p.ID, p.Time.Format(time.RFC3339), p.Nonconformities, p.Observations, p.Waived, p.Opened, p.Cleared,
		each(p.ByRule, func(c audit.RuleCount) ruleCountJSON { return ruleCountJSON(c) }),
	}
}

func asStanding(s *audit.Standing) standingJSON {
	return standingJSON{
		Rule: s.Rule, Kind: s.Kind, Record: s.Record, Message: s.Message, Before: s.Carried, Introduced: maybe(s.Introduced), Opened: maybe(s.Opened),
		ClearedBy: maybe(s.ClearedBy), Cleared: maybe(s.Cleared), Days: s.Days, WaivedDays: s.Waived, Waiver: s.Covered(),
		Spells: each(s.Spells, func(p audit.Spell) spellJSON { return spellJSON{p.Waiver, asRevision(p.From), maybe(p.To)} }),
	}
}

func asWaiver(l audit.WaiverLife) waiverJSON {
	return waiverJSON{
		Label: l.Label, Rule: l.Rule, Records: texts(l.Records), Reason: l.Reason, Granted: l.Granted, Expires: l.Expires.String(), Expired: l.Expired,
		Entered: maybe(l.Entered), Withdrawn: maybe(l.Withdrawn), Findings: l.Findings, Covers: l.Covers,
		Changes: each(l.Changes, func(c audit.WaiverChange) waiverChangeJSON {
			return waiverChangeJSON{asRevision(c.Revision), c.Before.String(), c.After.String(), texts(c.Added), texts(c.Dropped), c.Reworded}
		}),
	}
}
