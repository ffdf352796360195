package drawing

import (
	"cmp"
	"slices"
)

// Sizes of the route drawing, in pixels.
const (
	nameSize, titleSize, lineSize = 13, 11, 11
	stopPad                       = 10
	leastStop                     = 120
	stopHeight, visitHeight       = 36, 15
	leastGap                      = 22 // between stops
	lanePitch                     = 22
	laneStart                     = 26
	dotRoom                       = 9 // what a dot covers of its line
	margin                        = 6
)

// lay gives every stop and line its place.
func (m *Map) lay() {
	lanes := m.assign()
	width := leastStop
	for i := range m.Stops {
		st := &m.Stops[i]
		width = max(width, wide(st.Label, nameSize)+2*stopPad, wide(st.Title, titleSize)+2*stopPad, wide(st.Visits, titleSize)+2*stopPad)
	}
	gaps := m.gaps()
	y := margin
	for i := range m.Stops {
		st := &m.Stops[i]
		st.X, st.Y, st.Width, st.Height = margin, y, width, stopHeight
		if st.Visits != "" {
			st.Height += visitHeight
		}
		y += st.Height + gaps[i]
	}
	most := -1
	for i := range m.Lines {
		m.Lines[i].X = margin + width + laneStart + lanes[i]*lanePitch
		m.place(&m.Lines[i])
		most = max(most, lanes[i])
	}
	m.Width = 2*margin + width
	if most >= 0 {
		m.Width += laneStart + most*lanePitch + lanePitch/2
	}
	m.Height = y + margin
}

// place gives a line its dots and its label.
func (m *Map) place(l *Line) {
	rows := slices.Compact(slices.Sorted(slices.Values(l.rows)))
	for _, r := range rows {
		st := &m.Stops[r]
		l.Dots = append(l.Dots, st.Y+st.Height/2)
		st.Reach = max(st.Reach, l.X)
	}
	if len(rows) == 0 {
		return
	}
	l.Top, l.Bottom = l.Dots[0], l.Dots[len(l.Dots)-1]
	if len(rows) == 1 {
		l.Bottom = l.Top + 2*dotRoom + wide(l.Label, lineSize)
		l.LabelY = (l.Top + l.Bottom + dotRoom) / 2
		return
	}
	best := 1
	for i := 1; i < len(l.Dots); i++ {
		if l.Dots[i]-l.Dots[i-1] > l.Dots[best]-l.Dots[best-1] {
			best = i
		}
	}
	l.LabelY = (l.Dots[best] + l.Dots[best-1]) / 2
}

// assign gives each line a lane such that lines in one lane never meet, short
// lines nearest to the spaces.
func (m *Map) assign() []int {
	order := make([]int, len(m.Lines))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		la, lb := &m.Lines[a], &m.Lines[b]
		a0, a1 := la.span()
		b0, b1 := lb.span()
		return cmp.Or(cmp.Compare(a1-a0, b1-b0), cmp.Compare(a0, b0), cmp.Compare(la.Label, lb.Label))
	})
	lanes := make([]int, len(m.Lines))
	var taken [][][2]int
	for _, i := range order {
		from, to := m.Lines[i].span()
		lane := 0
		for lane < len(taken) && slices.ContainsFunc(taken[lane], func(t [2]int) bool { return from <= t[1] && t[0] <= to }) {
			lane++
		}
		if lane == len(taken) {
			taken = append(taken, nil)
		}
		taken[lane] = append(taken[lane], [2]int{from, to})
		lanes[i] = lane
	}
	return lanes
}

// span is what a line takes of its lane, in half rows: one that passes a single
// space hangs down into the gap below.
func (l *Line) span() (from, to int) {
	if len(l.rows) == 0 {
		return 0, 0
	}
	from, to = 2*slices.Min(l.rows), 2*slices.Max(l.rows)
	if from == to {
		to++
	}
	return from, to
}

// gaps makes the room below each stop wide enough for the labels of the lines.
func (m *Map) gaps() []int {
	gaps := slices.Repeat([]int{leastGap}, len(m.Stops))
	for i := range m.Lines {
		l := &m.Lines[i]
		rows := slices.Compact(slices.Sorted(slices.Values(l.rows)))
		need := wide(l.Label, lineSize) + 2*dotRoom
		switch len(rows) {
		case 0:
		case 1:
			gaps[rows[0]] = max(gaps[rows[0]], need-stopHeight/2+dotRoom)
		default:
			m.widen(gaps, rows, need)
		}
	}
	return gaps
}

// widen makes the widest stretch between two stops of a line hold its label.
func (m *Map) widen(gaps, rows []int, need int) {
	best, at := 0, 0
	for i := 1; i < len(rows); i++ {
		room := stopHeight
		for r := rows[i-1]; r < rows[i]; r++ {
			room += gaps[r]
			if r > rows[i-1] {
				room += stopHeight
			}
		}
		if room > best {
			best, at = room, rows[i]-1
		}
	}
	if best < need {
		gaps[at] += need - best
	}
}
