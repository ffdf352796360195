package diffreport

import "homerun/schema"

// stage is what a run's state says about the cable itself.
type stage uint8

const (
	unreadable stage = iota
	onPaper          // planned: the cable is not there yet
	inUse            // in service or spare: terminated and kept
	outOfUse         // tagged or abandoned: there, but withdrawn
)

func stageOf(state string) stage {
	switch state {
	case schema.StatePlanned:
		return onPaper
	case schema.StateInService, schema.StateSpare:
		return inUse
	case schema.StateTagged, schema.StateAbandoned:
		return outOfUse
	}
	return unreadable
}

// stage is where a record is in its life; anything but a run is in use.
func (s subject) stage() stage {
	if s.Kind.Name != schema.KindRun {
		return inUse
	}
	return stageOf(stateText(s.Own(schema.RunState.Name)))
}

// stateMeaning is what the step from one state to another asks of the crew.
func stateMeaning(before, after string) (schema.Meaning, string) {
	from, to := stageOf(before), stageOf(after)
	switch {
	case from == onPaper && to == inUse:
		return schema.Repull, "it was only planned: it is installed now"
	case from == inUse && to == onPaper:
		return schema.Repull, "it is taken out; the plan for it stays"
	case from == inUse && after == schema.StateTagged:
		return schema.Reterminate, "it is taken out of use and tagged for future use"
	case from == inUse && to == outOfUse:
		return schema.Reterminate, "it is taken out of use and left in place"
	case from == outOfUse && to == inUse:
		return schema.Reterminate, "it is brought back into use"
	case from == outOfUse && to == outOfUse:
		return schema.Relabelling, "it stays out of use; its tag for future use is put on or taken off"
	case from == inUse && to == inUse:
		return schema.Paper, "it stays terminated, in service or kept spare"
	}
	return schema.Paper, "it was never installed as planned"
}

// transition is the class of a run's step from one state to another; decided
// is false where the state does not tell.
func transition(was, is subject) (class Class, why string, decided bool) {
	from, to := was.stage(), is.stage()
	if is.Kind.Name != schema.KindRun {
		return 0, "", false
	}
	before, after := stateText(was.Own(schema.RunState.Name)), stateText(is.Own(schema.RunState.Name))
	_, why = stateMeaning(before, after)
	switch {
	case from == onPaper && to == onPaper:
		return ClassRecordsOnly, "it is only planned: nothing is installed yet", true
	case from == onPaper && to == inUse:
		return ClassAdd, why, true
	case from == inUse && to == onPaper:
		return ClassRemoval, why, true
	case from == onPaper || to == onPaper:
		return ClassRecordsOnly, why, true
	case from == inUse && to == outOfUse, from == outOfUse && to == inUse, from == outOfUse && before != after:
		return ClassChange, why, true
	}
	return 0, "", false
}
