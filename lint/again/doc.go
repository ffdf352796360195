// Package again judges a plant again after a change, and looks only at what the
// change can touch.
//
// A Standing is the records of a plant as they stand, with what the rules found in
// them. Step puts other files in the place of some, or takes them away, and tells
// which findings have gone and which have come: the same that lint.Run finds on
// both sides, at the cost of the change and not of the plant.
//
//	s := again.New(again.Options{Dir: ".", Rules: rules.All(), Known: names})
//	first, err := s.Step(files, today)      // everything has come
//	next, err := s.Step(changedFiles, today) // Gone, Come; Base and Head hold what differs
//
// Who changes single records gives each of them a file of its own: then a step costs
// what the record touches, however many records there are.
//
// How it works: from the records that differ it finds those whose findings can
// differ too, and all that the rules read to judge them (see lint.Reach). A small
// plant is built of those before the change and another of those after it, both
// are held against the rules, and what differs is what differs in the whole plant.
// Where a finding differs that more records add up to than were looked at, the
// excerpt is widened, in the end to the whole plant. Of a bundle the excerpt has the
// runs that the change can touch, unless a rule reads all of them together (see
// lint.Rule.Gathers); what lies in a pathway is counted while records come and go, and
// of each sort the first cable stands for all.
//
// A Standing knows nothing of git and is not safe for several goroutines. Findings
// that it carries keep no place in a file: only those of a step's own records have
// one.
package again
