package drawing

import (
	"slices"
	"strings"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
)

// A survey collects the spaces and pathways of an order.
type survey struct {
	base, head     *plant.Plant
	former, latter func(string) string
	// visits are the numbers of the visits to each space, in order; spaces the
	// spaces in the order in which they were met.
	visits map[string][]int
	spaces []string
	met    map[string]bool
	// onCourse are the spaces at which a line stops.
	onCourse map[string]bool
	lines    []*course
	byKey    map[string]*course
}

// A course is one pathway on its way into the drawing.
type course struct {
	label, kind string
	passes      []string
	in, out     int
	// done is what happens to the pathway itself.
	done []string
}

func newSurvey(o *diffreport.Order, base, head *plant.Plant) *survey {
	b := newBoard(o, base, head)
	return &survey{base: b.base, head: b.head, former: b.former, latter: b.latter, visits: make(map[string][]int), met: make(map[string]bool), onCourse: make(map[string]bool), byKey: make(map[string]*course)}
}

// call notes one visit and what is done in it.
func (s *survey) call(v diffreport.Visit) {
	s.meet(v.Space)
	s.visits[v.Space] = append(s.visits[v.Space], v.Number)
	for i := range v.Steps {
		step := &v.Steps[i]
		for _, label := range step.Records {
			s.follow(step.Action, label)
		}
	}
}

func (s *survey) meet(space string) {
	if !s.met[space] {
		s.met[space] = true
		s.spaces = append(s.spaces, space)
	}
}

// follow goes along the route of a run that is laid or taken out, or to a
// pathway that is worked on.
func (s *survey) follow(action diffreport.Action, label string) {
	now, _ := s.head.Find(label)
	if path, ok := now.(*plant.Pathway); ok {
		s.worked(path, path.Label, action)
		return
	}
	was, _ := s.base.Find(s.earlier(label))
	if path, ok := was.(*plant.Pathway); ok && now == nil {
		s.worked(path, path.Label, action)
		return
	}
	if run, ok := now.(*plant.Run); ok && action == diffreport.Pull {
		s.along(run, func(label string) string { return label }, func(c *course) { c.in++ })
	}
	if run, ok := was.(*plant.Run); ok && action == diffreport.Remove {
		s.along(run, s.later, func(c *course) { c.out++ })
	}
}

// earlier is what the earlier plant called a record; one that only it has
// keeps its label.
func (s *survey) earlier(label string) string {
	if was := s.former(label); was != "" {
		return was
	}
	return label
}

func (s *survey) later(label string) string {
	if now := s.latter(label); now != "" {
		return now
	}
	return label
}

// along counts a run on each pathway of its route.
func (s *survey) along(r *plant.Run, called func(string) string, count func(*course)) {
	if r.Way == nil || len(r.Way.Pathways) == 0 {
		from, to := r.From.Space(), r.To.Space()
		if from != nil && to != nil && from != to {
			count(s.course("", "no route recorded", []string{called(from.Label), called(to.Label)}))
		}
		return
	}
	for _, path := range r.Way.Pathways {
		count(s.pathway(path, called))
	}
}

// worked notes a pathway that is itself installed, taken out or labelled.
func (s *survey) worked(path *plant.Pathway, label string, action diffreport.Action) {
	c := s.pathway(path, s.later)
	word := string(action)
	switch action {
	case diffreport.Install:
		word = "installed"
	case diffreport.Remove:
		word = "taken out"
	case diffreport.Affix:
		word = "labelled"
	case diffreport.Isolate, diffreport.Disconnect, diffreport.Tag, diffreport.Bond, diffreport.Pull, diffreport.Terminate, diffreport.Measure,
		diffreport.Patch, diffreport.Swap, diffreport.Restore, diffreport.HandOver:
	}
	if c.label == "" {
		c.label = label
	}
	if !slices.Contains(c.done, word) {
		c.done = append(c.done, word)
	}
}

func (s *survey) pathway(path *plant.Pathway, called func(string) string) *course {
	kind, _ := schema.PathwayKind.In(path.Record())
	passes := make([]string, len(path.Through))
	for i, sp := range path.Through {
		passes[i] = called(sp.Label)
	}
	return s.course(called(path.Label), kind, passes)
}

// course finds a line, or begins one.
func (s *survey) course(label, kind string, passes []string) *course {
	key := "pathway " + label
	if label == "" {
		slices.Sort(passes)
		key = "between " + strings.Join(passes, "\x00")
	}
	c := s.byKey[key]
	if c == nil {
		c = &course{label: label, kind: kind, passes: passes}
		s.byKey[key] = c
		s.lines = append(s.lines, c)
		for _, sp := range passes {
			s.meet(sp)
			s.onCourse[sp] = true
		}
	}
	return c
}

func (c *course) use() Use {
	switch {
	case c.in > 0:
		return In
	case c.out > 0:
		return Out
	}
	return Only
}

// words says what is done on the course.
func (c *course) words() string {
	parts := slices.Clone(c.done)
	if c.in > 0 {
		parts = append(parts, counted(c.in, "run", "runs")+" pulled in")
	}
	if c.out > 0 {
		parts = append(parts, counted(c.out, "run", "runs")+" taken out")
	}
	return strings.Join(parts, ", ")
}

// space finds a space in either plant.
func (s *survey) space(label string) *plant.Space {
	if it, _ := s.head.Find(label); it != nil {
		if sp, ok := it.(*plant.Space); ok {
			return sp
		}
	}
	it, _ := s.base.Find(s.earlier(label))
	sp, _ := it.(*plant.Space)
	return sp
}

// walk puts the spaces in an order in which most pathways are short: from the
// first one visited along the pathways, as somebody would walk. Spaces at which
// no pathway stops are apart.
func (s *survey) walk() (order, apart []string) {
	beside := make(map[string][]string)
	for _, c := range s.lines {
		for i := 1; i < len(c.passes); i++ {
			a, b := c.passes[i-1], c.passes[i]
			beside[a], beside[b] = append(beside[a], b), append(beside[b], a)
		}
	}
	seen := make(map[string]bool, len(s.spaces))
	// A stack of our own: records may chain any number of pathways.
	for _, start := range s.spaces {
		for stack := []string{start}; len(stack) > 0; {
			at := stack[len(stack)-1]
			stack = stack[:len(stack)-1]
			if seen[at] {
				continue
			}
			seen[at] = true
			if !s.onCourse[at] {
				apart = append(apart, at)
				continue
			}
			order = append(order, at)
			next := slices.Clone(beside[at])
			slices.Sort(next)
			slices.Reverse(next)
			stack = append(stack, slices.Compact(next)...)
		}
	}
	return order, apart
}
