package ability

import (
	"homerun/schema/standard"
)

// An Answer says whether a channel carries one application.
type Answer struct {
	// Application is its name in IEEE 802.3, as records write it.
	Application string
	// Verdict is the answer; zero where the records do not tell.
	Verdict standard.Verdict
	// Because is the limit, the condition or the missing value that decides,
	// in one phrase; for a channel that carries, how far it goes.
	Because string
	// Short is by how much the channel misses what it would need; empty where
	// nothing is missed, or where it is no quantity.
	Short string
	// Mend is what would make it carry; empty where it does.
	Mend string
	// Source is where the deciding figure stands.
	Source string
	// Working is the sum behind the answer.
	Working []Term
}

// A Term is one line of a sum.
type Term struct{ Term, Value string }

// Word is the verdict in words, with the fourth answer.
func (a *Answer) Word() string {
	if a.Verdict == 0 {
		return "can not be told"
	}
	return a.Verdict.String()
}

// A Margin is one quantity of a channel beside its limit.
type Margin struct {
	// What is the quantity, such as "channel length".
	What string
	// Value, Limit and Left are printed alike; Left is negative where the
	// limit is exceeded.
	Value, Limit, Left string
	// Over is set where the limit is exceeded; Least where the limit is the
	// least that is needed, so that less than it counts as over.
	Over, Least bool
	// Source is where the limit stands.
	Source string
	// Working is the sum that gives the value; empty where it is recorded.
	Working []Term
}

// A Gap is something that could not be worked out, and the field that would
// allow it.
type Gap struct {
	// Record is the label of the record that lacks the field, What what is
	// lacking and what for.
	Record, What string
}

// unanswered is the fourth answer.
func unanswered(application string, gap Gap) Answer {
	return Answer{Application: application, Because: gap.Record + ": " + gap.What, Mend: "state it in the record"}
}
