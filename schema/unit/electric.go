package unit

// Power is a power in microwatts.
type Power int64

// Current is a current in microamperes.
type Current int64

// Powers and currents to build others from.
const (
	Watt   Power   = 1_000_000
	Ampere Current = 1_000_000
)

var (
	watts      = scale{word: "W", per: int64(Watt)}
	milliwatts = scale{word: "mW", per: int64(Watt) / 1000}
	amperes    = scale{word: "A", per: int64(Ampere)}
	milliamps  = scale{word: "mA", per: int64(Ampere) / 1000}
)

var powers = kind{
	noun:   "power",
	scales: []scale{watts, milliwatts, {word: "kW", per: 1000 * int64(Watt)}, {word: "uW", per: 1}},
	names: map[string]string{
		"watt": "W", "watts": "W", "milliwatt": "mW", "milliwatts": "mW", "kilowatt": "kW", "kilowatts": "kW",
	},
	example:  "25.5 W",
	smallest: "a microwatt",
}

var currents = kind{
	noun:   "current",
	scales: []scale{amperes, milliamps, {word: "uA", per: 1}},
	names: map[string]string{
		"amp": "A", "amps": "A", "ampere": "A", "amperes": "A", "milliamp": "mA", "milliamps": "mA", "milliampere": "mA",
	},
	example:  "0.5 A",
	smallest: "a microampere",
}

// ParsePower reads "25.5 W" or "300 mW". Units: uW, mW, W, kW. The error is an *Error.
func ParsePower(s string) (Power, error) {
	v, err := powers.read(s)
	if err != nil {
		return 0, err
	}
	return Power(v), nil
}

// ParseCurrent reads "0.5 A" or "600 mA". Units: uA, mA, A. The error is an *Error.
func ParseCurrent(s string) (Current, error) {
	v, err := currents.read(s)
	if err != nil {
		return 0, err
	}
	return Current(v), nil
}

// electricScale chooses the whole unit from one of it, the thousandth below.
func electricScale(size uint64, whole, thousandth scale) scale {
	if size < uint64(whole.per) {
		return thousandth
	}
	return whole
}

// Text prints the power, as in "25.5 W" or "300 mW"; both systems write it alike.
func (p Power) Text(System) string {
	return electricScale(larger(int64(p), 0), watts, milliwatts).text(int64(p))
}

// Beside prints the power and a limit so that they never seem equal when they differ.
func (p Power) Beside(limit Power, _ System) (value, bound string) {
	s := electricScale(larger(int64(p), int64(limit)), watts, milliwatts)
	return s.beside(int64(p), int64(limit))
}

// String returns the text.
func (p Power) String() string { return p.Text(Metric) }

// Watts returns the power in watts, for formulas.
func (p Power) Watts() float64 { return float64(p) / float64(Watt) }

// Text prints the current, as in "1.2 A" or "600 mA"; both systems write it alike.
func (c Current) Text(System) string {
	return electricScale(larger(int64(c), 0), amperes, milliamps).text(int64(c))
}

// Beside prints the current and a limit so that they never seem equal when they differ.
func (c Current) Beside(limit Current, _ System) (value, bound string) {
	s := electricScale(larger(int64(c), int64(limit)), amperes, milliamps)
	return s.beside(int64(c), int64(limit))
}

// String returns the text.
func (c Current) String() string { return c.Text(Metric) }

// Amperes returns the current in amperes, for formulas.
func (c Current) Amperes() float64 { return float64(c) / float64(Ampere) }
