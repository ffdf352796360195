package audit

import (
	"homerun/diffreport"
	"homerun/diffreport/history"
	"homerun/schema"
	"homerun/schema/unit"
)

// A Step is one commit of a walk that goes from the oldest to the newest.
type Step struct {
	history.Revision
	// Day is the day by which the commit's waivers are judged.
	Day unit.Date
	// Parents are the ids of the commits before it, as far as they were walked.
	Parents []string
	// Before marks a commit that lies before the period: it says what stood when
	// the period began, and is counted nowhere.
	Before bool
	// Main marks the line of first parents that ends at the last commit.
	Main bool
	// Merge marks a commit with several parents, Root one without any.
	Merge, Root bool
	// Tags are the names that the commit was given, sorted.
	Tags []string
	// Records says whether it touches files of records.
	Records bool
	// Gone and Come are the findings about the state that the first parent has
	// and the commit has not, and the other way round; without a parent all of
	// them have come.
	Gone, Come []Finding
	// Former tells what a record is called in the first parent; nil where
	// nothing was renamed.
	Former func(label string) string
	// Against are the findings about the change itself.
	Against []Finding
	// Deeds are what the commit did to records that none of its parents had.
	Deeds []Deed
	// Waivers are those in the records at the commit, by label; HasWaivers says
	// that they were looked at because they may differ from the parent's.
	Waivers    []Waiver
	HasWaivers bool
	// Unread is how many mistakes of the records kept parts of them from being read.
	Unread int
}

// A Deed is what a commit did to one record.
type Deed struct {
	Kind, Label string
	// Former is the label that the record had before, where that was another.
	Former string
	Class  diffreport.Class
	// Meaning is the work on site.
	Meaning schema.Meaning
	// New is set where the record was not there before, Gone where it is not there
	// any more.
	New, Gone bool
}

// physical says whether the cable that a test would be made on is another one
// afterwards, or ends elsewhere.
func (d *Deed) physical() bool {
	if d.Kind != schema.KindRun || d.Gone {
		return false
	}
	switch d.Class {
	case diffreport.ClassAdd, diffreport.ClassMove, diffreport.ClassChange:
		return d.Class == diffreport.ClassAdd || d.Meaning >= schema.Reterminate
	case diffreport.ClassRemoval, diffreport.ClassRelabel, diffreport.ClassRecordsOnly:
		return false
	}
	return false
}

// A Waiver is leave to depart from a rule, as the records state it.
type Waiver struct {
	Label, Rule, Reason, Granted string
	Records                      []string
	Expires                      unit.Date
}
