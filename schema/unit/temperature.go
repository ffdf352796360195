package unit

// Temperature is a temperature in ninths of a millikelvin above 0 °C, so that steps of
// a thousandth of a degree are whole numbers in Celsius and in Fahrenheit.
type Temperature int64

// Steps of temperature. As 0 °C is zero, 20*DegreeCelsius is 20 °C.
const (
	DegreeCelsius    Temperature = 9000
	DegreeFahrenheit Temperature = 5000
)

// coldest is absolute zero, -273.15 °C.
const coldest = -27315 * DegreeCelsius / 100

var (
	celsius    = scale{word: "C", per: int64(DegreeCelsius)}
	fahrenheit = scale{word: "F", per: int64(DegreeFahrenheit), offset: -32 * int64(DegreeFahrenheit)}
)

var temperatures = kind{
	noun:   "temperature",
	scales: []scale{celsius, fahrenheit, {word: "K", per: int64(DegreeCelsius), offset: int64(coldest)}},
	names: map[string]string{
		"\u00b0c": "C", "\u00bac": "C", "\u00b0 c": "C", "\u2103": "C", "degc": "C", "deg c": "C", "celsius": "C", "centigrade": "C",
		"degree c": "C", "degrees c": "C", "degree celsius": "C", "degrees celsius": "C",
		"\u00b0f": "F", "\u00baf": "F", "\u00b0 f": "F", "\u2109": "F", "degf": "F", "deg f": "F", "fahrenheit": "F",
		"degree f": "F", "degrees f": "F", "degree fahrenheit": "F", "degrees fahrenheit": "F", "kelvin": "K",
	},
	example:  "24 C",
	smallest: "a ninth of a thousandth of a degree Celsius",
	floor:    int64(coldest),
}

// ParseTemperature reads "24 C", "75 F" or "297.15 K". The error is an *Error.
func ParseTemperature(s string) (Temperature, error) {
	v, err := temperatures.read(s)
	if err != nil {
		return 0, err
	}
	return Temperature(v), nil
}

// temperatureScale chooses the unit of the system.
func temperatureScale(sys System) scale {
	if sys == US {
		return fahrenheit
	}
	return celsius
}

// Text prints the temperature, as in "26 C" or "78.8 F", rounded to three decimals
// where it has more.
func (t Temperature) Text(sys System) string { return temperatureScale(sys).text(int64(t)) }

// Beside prints the temperature and a limit so that they never seem equal when they
// differ.
func (t Temperature) Beside(limit Temperature, sys System) (value, bound string) {
	return temperatureScale(sys).beside(int64(t), int64(limit))
}

// String returns the metric text.
func (t Temperature) String() string { return t.Text(Metric) }

// Celsius returns the temperature in degrees Celsius, for formulas.
func (t Temperature) Celsius() float64 { return float64(t) / float64(DegreeCelsius) }
