package again

// A name is a label with what the records and the findings have to do with it. All
// that name a label lead to the same name, so that nothing is looked up by its text
// on the way from record to record.
type name struct {
	label string
	// bearers are the pieces under the label, namers those that name it, once for each time.
	bearers, namers []*piece
	// byPort are the namers by the port that they name, wide those that name many ports.
	byPort map[int][]*piece
	wide   []*piece
	// noted are the rules of the findings about the label, once for each finding.
	noted []string
}

// nameOf is what is known of a label, to be changed; of is the same to be looked at.
func (s *Standing) nameOf(label string) *name {
	n := s.names[label]
	if n == nil {
		n = &name{label: label}
		s.names[label] = n
	}
	return n
}

func (s *Standing) of(label string) *name {
	if n := s.names[label]; n != nil {
		return n
	}
	return &s.nobody
}

// settleName forgets a name that nothing has to do with any more.
func (s *Standing) settleName(n *name) {
	if len(n.bearers)+len(n.namers)+len(n.noted) == 0 {
		delete(s.names, n.label)
	}
}
