package unit

// Period is a period in seconds, such as the rating of a fire-stop.
type Period int64

// Angle is an angle in thousandths of a degree, such as a bend.
type Angle int64

// Periods and angles to build others from.
const (
	Second Period = 1
	Minute        = 60 * Second
	Hour          = 60 * Minute
	Day           = 24 * Hour

	Degree Angle = 1000
)

var (
	hours   = scale{word: "h", per: int64(Hour)}
	minutes = scale{word: "min", per: int64(Minute)}
	seconds = scale{word: "s", per: int64(Second)}
	degrees = scale{word: "deg", per: int64(Degree)}
)

var periods = kind{
	noun:   "period",
	scales: []scale{hours, minutes, seconds, {word: "d", per: int64(Day)}},
	names: map[string]string{
		"hour": "h", "hours": "h", "hr": "h", "hrs": "h", "minute": "min", "minutes": "min", "mins": "min", "m": "min",
		"second": "s", "seconds": "s", "sec": "s", "secs": "s", "day": "d", "days": "d",
	},
	example:  "2 h",
	smallest: "a second",
}

var angles = kind{
	noun:     "angle",
	scales:   []scale{degrees},
	names:    map[string]string{"degree": "deg", "degrees": "deg", "degs": "deg", "\u00b0": "deg", "\u00ba": "deg"},
	example:  "90 deg",
	smallest: "a thousandth of a degree",
}

// ParsePeriod reads "1 h", "90 min" or "1.5 h". Units: s, min, h, d. The error is an
// *Error.
func ParsePeriod(s string) (Period, error) {
	v, err := periods.read(s)
	if err != nil {
		return 0, err
	}
	return Period(v), nil
}

// ParseAngle reads "90 deg". The error is an *Error.
func ParseAngle(s string) (Angle, error) {
	v, err := angles.read(s)
	if err != nil {
		return 0, err
	}
	return Angle(v), nil
}

// periodScale chooses the largest of hours, minutes and seconds that counts both
// periods in whole numbers.
func periodScale(p, q Period) scale {
	switch {
	case p%Hour == 0 && q%Hour == 0:
		return hours
	case p%Minute == 0 && q%Minute == 0:
		return minutes
	default:
		return seconds
	}
}

// Text prints the period in whole hours, minutes or seconds; both systems write it
// alike.
func (p Period) Text(System) string { return periodScale(p, p).text(int64(p)) }

// Beside prints the period and a limit in one unit.
func (p Period) Beside(limit Period, _ System) (value, bound string) {
	return periodScale(p, limit).beside(int64(p), int64(limit))
}

// String returns the text.
func (p Period) String() string { return p.Text(Metric) }

// Text prints the angle, as in "90 deg"; both systems write it alike.
func (a Angle) Text(System) string { return degrees.text(int64(a)) }

// Beside prints the angle and a limit so that they never seem equal when they differ.
func (a Angle) Beside(limit Angle, _ System) (value, bound string) {
	return degrees.beside(int64(a), int64(limit))
}

// String returns the text.
func (a Angle) String() string { return a.Text(Metric) }

// Degrees returns the angle in degrees, for formulas.
func (a Angle) Degrees() float64 { return float64(a) / float64(Degree) }
