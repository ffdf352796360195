package plant

// A stock hands out room for short lists, cut from longer ones: a plant has many lists
// of one or two, and to allocate each for itself is what building it would otherwise
// spend its time on.
type stock[T any] struct {
	room []T
	last int
}

// The least and the most that a stock takes in at once.
const (
	leastRoom = 4
	mostRoom  = 512
)

// list is an empty list with room for so many.
func (s *stock[T]) list(n int) []T {
	if n == 0 {
		return nil
	}
	if n > len(s.room) {
		s.last = min(max(leastRoom, 2*s.last), mostRoom)
		if n > s.last {
			return make([]T, 0, n) // what is left serves others
		}
		s.room = make([]T, s.last)
	}
	list := s.room[:0:n]
	s.room = s.room[n:]
	return list
}

// one is a list of one item.
func (s *stock[T]) one(it T) []T { return append(s.list(1), it) }

// stocks are what the lists inside of items are cut from.
type stocks struct {
	ports   stock[Port]
	ways    stock[Way]
	passed  stock[*Pathway]
	through stock[*Space]
	tested  stock[*Test]
	linked  stock[*Link]
	corded  stock[*Cord]
	parts   stock[Part]
}
