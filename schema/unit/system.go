package unit

// System chooses the units in which a quantity is printed. It never changes the
// quantity.
type System uint8

// The two systems. The zero value is Metric.
const (
	Metric System = iota
	US
)

// String returns the word for the system, "metric" or "us".
func (s System) String() string {
	if s == US {
		return "us"
	}
	return "metric"
}
