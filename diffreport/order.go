package diffreport

import (
	"time"

	"homerun/schema/unit"
)

// An Order is the work that leads from one plant to another, in steps that can
// be carried out in their order.
type Order struct {
	// Plant is the plant's label; Base and Head are the revisions compared.
	Plant, Base, Head string
	// Number is made of the two revisions, so that the same change has the
	// same number wherever the order is made out.
	Number string
	// Units is the system in which the plant's quantities are printed.
	Units unit.System
	// Executable says whether carrying out the steps on a model of the port
	// sides led from base to head without a side used twice. Clashes say why
	// not; without any there is an order that works, and Steps is one.
	Executable bool
	Clashes    []string
	Changes    []Change
	Counts     Counts
	Steps      []Step
	Materials  []Material
	// Labels are the labels to print, each as often as it is needed: those of a
	// run, cord or pathway twice, for its two ends, those of a fire-stop for its
	// two sides.
	Labels []string
	// Strips are the panels and outlets whose ports are labelled with a strip.
	Strips []string
	// Firestops are those that are made, or made anew.
	Firestops []Firestop
	Tests     []Test
	Outages   []Outage
	// Cautions are those of all steps, each danger once, with all its places.
	Cautions []string
	// BackOut is how the work is taken back, from whatever step it has come to:
	// the ways back of the steps done, in this order, the last step's first.
	BackOut []Back
	// Duties are what the code asks for because of this work.
	Duties []string
	// Proven says in sentences what the replay of the steps has shown.
	Proven []string
	// Commits are what the change is made of, oldest first, as the caller
	// read them.
	Commits []Commit
	// Introduced and Cleared are the linter's findings that the change brings
	// and those that it settles, as the caller found them.
	Introduced, Cleared []FindingLine

	// cautionAt finds the number of a step's caution among those of the order.
	cautionAt map[string]int
}

// A Step is one thing to do in one place.
type Step struct {
	// Number counts from 1; steps are done in this order.
	Number int
	// Visit is the number of the stay in a room that the step is part of.
	Visit  int
	Action Action
	Class  Class
	// Space is where it is done, empty where the records do not say.
	Space string
	// Records are the labels concerned, as the later plant has them.
	Records []string
	Text    string
	// After are the steps that have to be done before this one.
	After []int
	// Outage are the ports that lose service with this step.
	Outage   []string
	Cautions []string
	// RoomFor is the label of the cable for which this one comes off only for a
	// moment, to break a ring of ports that wait for each other; mostly empty.
	RoomFor string
	// Undo is how the step is taken back; empty where nothing has to be done,
	// as after a measurement.
	Undo string

	takes, frees []hold
	deeds        []deed
}

// A Back is how one step is taken back.
type Back struct {
	// Step is the number of the step, Visit that of its visit.
	Step, Visit int
	Space, Text string
}

// An Action is what is done in a step.
type Action string

// The actions, in the order in which a crew does them.
const (
	Isolate    Action = "isolate"
	Disconnect Action = "disconnect"
	Remove     Action = "remove"
	Tag        Action = "tag"
	Install    Action = "install"
	Bond       Action = "bond"
	Pull       Action = "pull"
	Terminate  Action = "terminate"
	Affix      Action = "label"
	Measure    Action = "test"
	Patch      Action = "patch"
	// Swap exchanges two cords of one room at their ports.
	Swap Action = "swap"
	// Restore switches on again what Isolate switched off.
	Restore Action = "restore"
	// HandOver tells whom a service belongs to that it is back.
	HandOver Action = "hand over"
)

// A Material is what the work uses up: a length of cable or a number of pieces.
type Material struct {
	Item string
	// Length is the sum of the parts; 0 where pieces are counted.
	Length unit.Length
	Count  int
	Parts  []Part
	// Unknown are the records that state no length and are not in the sum.
	Unknown []string
}

// A Part is one record's share of a material.
type Part struct {
	Record string
	Length unit.Length
	Count  int
}

// A Test is a measurement that the work ends with.
type Test struct{ Record, Limit, Reason string }

// An Outage is a port without service between two steps.
type Outage struct {
	// Port is as the earlier plant has it.
	Port string
	// Service is what its cords are recorded to carry, where they say.
	Service string
	// From and To are step numbers; To is 0 where service does not return.
	From, To int
	// At are the ports of the later plant where it goes on, empty where it is
	// back at its own.
	At []string
}

// A Commit is one step of the history that led to the change.
type Commit struct {
	// Body says why, in the author's words; it may be empty.
	ID, Author, Subject, Body string
	Time                      time.Time
}

// A FindingLine is one finding of the linter, as other programs read it.
type FindingLine struct {
	Rule, Severity, Kind, Record string
	Path                         string
	Line, Column                 int
	Message                      string
	Working                      []Term
	Result, Limit, Source        string
	Related                      []Place
}

// A Term is one line of a sum.
type Term struct{ Term, Value string }

// A Place is another record that belongs to a finding.
type Place struct {
	Kind, Record, Path string
	Line, Column       int
	Message            string
}
