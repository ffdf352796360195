package unit

// Frequency is a frequency in hertz.
type Frequency int64

// Loss is a loss or a margin in ten-thousandths of a decibel.
type Loss int64

// Level is a signal level on coaxial cable in ten-thousandths of a dBmV.
type Level int64

// Frequencies, losses and levels to build others from.
const (
	Hertz     Frequency = 1
	Kilohertz           = 1000 * Hertz
	Megahertz           = 1000 * Kilohertz

	Decibel Loss = 10_000

	DBmV Level = 10_000
)

var (
	megahertz = scale{word: "MHz", per: int64(Megahertz)}
	kilohertz = scale{word: "kHz", per: int64(Kilohertz)}
	hertz     = scale{word: "Hz", per: int64(Hertz)}
	decibels  = scale{word: "dB", per: int64(Decibel)}
	dbmv      = scale{word: "dBmV", per: int64(DBmV)}
)

var frequencies = kind{
	noun:   "frequency",
	scales: []scale{megahertz, {word: "GHz", per: 1000 * int64(Megahertz)}, kilohertz, hertz},
	names: map[string]string{
		"megahertz": "MHz", "gigahertz": "GHz", "kilohertz": "kHz", "hertz": "Hz", "mc": "MHz", "mhertz": "MHz",
	},
	example:  "250 MHz",
	smallest: "a hertz",
}

var losses = kind{
	noun:     "loss",
	scales:   []scale{decibels},
	names:    map[string]string{"decibel": "dB", "decibels": "dB", "dbs": "dB"},
	example:  "2.6 dB",
	smallest: "a ten-thousandth of a decibel",
}

var levels = kind{
	noun:     "level",
	scales:   []scale{dbmv},
	names:    map[string]string{"db mv": "dBmV", "decibel millivolts": "dBmV", "db": "dBmV"},
	example:  "12 dBmV",
	smallest: "a ten-thousandth of a dBmV",
}

// ParseFrequency reads "250 MHz". Units: Hz, kHz, MHz, GHz. The error is an *Error.
func ParseFrequency(s string) (Frequency, error) {
	v, err := frequencies.read(s)
	if err != nil {
		return 0, err
	}
	return Frequency(v), nil
}

// ParseLoss reads "2.6 dB". The error is an *Error.
func ParseLoss(s string) (Loss, error) {
	v, err := losses.read(s)
	if err != nil {
		return 0, err
	}
	return Loss(v), nil
}

// ParseLevel reads "12 dBmV". The error is an *Error.
func ParseLevel(s string) (Level, error) {
	v, err := levels.read(s)
	if err != nil {
		return 0, err
	}
	return Level(v), nil
}

// frequencyScale chooses megahertz from 1 MHz, kilohertz from 1 kHz, hertz below. The
// trade says 2000 MHz, so gigahertz are read and never printed.
func frequencyScale(size uint64) scale {
	switch {
	case size >= uint64(Megahertz):
		return megahertz
	case size >= uint64(Kilohertz):
		return kilohertz
	default:
		return hertz
	}
}

// Text prints the frequency, as in "250 MHz"; both systems write it alike.
func (f Frequency) Text(System) string {
	return frequencyScale(larger(int64(f), 0)).text(int64(f))
}

// Beside prints the frequency and a limit so that they never seem equal when they
// differ.
func (f Frequency) Beside(limit Frequency, _ System) (value, bound string) {
	return frequencyScale(larger(int64(f), int64(limit))).beside(int64(f), int64(limit))
}

// String returns the text.
func (f Frequency) String() string { return f.Text(Metric) }

// Megahertz returns the frequency in megahertz, for formulas.
func (f Frequency) Megahertz() float64 { return float64(f) / float64(Megahertz) }

// Text prints the loss, as in "2.6 dB"; both systems write it alike.
func (l Loss) Text(System) string { return decibels.text(int64(l)) }

// Beside prints the loss and a limit so that they never seem equal when they differ.
func (l Loss) Beside(limit Loss, _ System) (value, bound string) {
	return decibels.beside(int64(l), int64(limit))
}

// String returns the text.
func (l Loss) String() string { return l.Text(Metric) }

// Decibels returns the loss in decibels, for formulas.
func (l Loss) Decibels() float64 { return float64(l) / float64(Decibel) }

// Text prints the level, as in "12 dBmV"; both systems write it alike.
func (l Level) Text(System) string { return dbmv.text(int64(l)) }

// Beside prints the level and a limit so that they never seem equal when they differ.
func (l Level) Beside(limit Level, _ System) (value, bound string) {
	return dbmv.beside(int64(l), int64(limit))
}

// String returns the text.
func (l Level) String() string { return l.Text(Metric) }

// DBmV returns the level in decibels over a millivolt, for formulas.
func (l Level) DBmV() float64 { return float64(l) / float64(DBmV) }
