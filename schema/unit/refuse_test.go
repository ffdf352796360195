package unit_test

import (
	"strings"
	"testing"

	"homerun/schema/unit"
)

// TestRefusals shows what a records keeper reads: the fault, and what to write.
func TestRefusals(t *testing.T) {
	t.Parallel()
	parsers := map[string]func(string) (int64, error){}
	for _, q := range quantities() {
		parsers[q.name] = q.parse
	}
	parsers["date"] = func(s string) (int64, error) { _, err := unit.ParseDate(s); return 0, err }
	parsers["conductor"] = func(s string) (int64, error) { _, err := unit.ParseConductor(s); return 0, err }
	for _, c := range []struct{ kind, text, want string }{
		{"length", "", `length is empty: write "41.5 m"`},
		{"length", "41.5", `length needs a unit: write "41.5 m" or "41.5 ft"`},
		{"length", "41,5 m", `length has a decimal comma: write "41.5 m"`},
		{"length", "1,000 m", `length has a comma in its number: write "1000 m" or "1.000 m"`},
		{"length", "136 feet", `length unit "feet" is not known: write "136 ft"`},
		{"length", "41.5 metrs", `length unit "metrs" is not known: write "41.5 m"`},
		{"length", "41.5 mtr", `length unit "mtr" is not known: write "41.5 m"`},
		{"length", "41.5 M", `length unit "M" is not known: write "41.5 m"`},
		{"length", "12'6\"", `length "12'6\"" is not in the form that is read: write "12 ft 6 in"`},
		{"length", "12 feet 6 inches", `length "12 feet 6 inches" is not in the form that is read: write "12 ft 6 in"`},
		{"length", "12 ft 14 in", `length has twelve inches or more beside its feet: write "12 ft 6 in"`},
		{"length", "12.5 ft 6 in", `length in feet and inches needs whole feet: write "12 ft 6 in"`},
		{"length", "1e3 m", `length has an exponent, numbers are written out: write "41.5 m"`},
		{"length", "inf", `length "inf" does not start with a number: write "41.5 m"`},
		{"length", "NaN m", `length "NaN m" does not start with a number: write "41.5 m"`},
		{"length", "41.5  m", `length needs one plain space, or none, before its unit: write "41.5 m"`},
		{"length", "41.5\u00a0m", `length needs one plain space, or none, before its unit: write "41.5 m"`},
		{"length", ".5 m", `length has no digit before the point: write "0.5 m"`},
		{"length", "5. m", `length has no digit after the point: write "5 m"`},
		{"length", "0.5 nm", `length "0.5 nm" is finer than a nanometre, the smallest step kept`},
		{"length", "9300000 km", `length "9300000 km" is larger than can be kept`},
		{"length", "0.0000000000000000001 m", `length "0.0000000000000000001" has more digits than can be kept exactly`},
		{"length", strings.Repeat("9", 70), `length "999999999999999999999999"... is too long to be one: write "41.5 m"`},
		{"length", "4\x1b[2J m", `length unit "\x1b[2J m" is not known, the units are m, ft, mm, in, cm, km, um, nm, yd, mi: write "4 m" or "4 ft"`},
		{"temperature", "24", `temperature needs a unit: write "24 C" or "24 F"`},
		{"temperature", "24 °C", `temperature unit "°C" is not known: write "24 C"`},
		{"temperature", "24 ºC", `temperature unit "ºC" is not known: write "24 C"`},
		{"temperature", "-273.16 C", `temperature "-273.16 C" is lower than there is: write "24 C"`},
		{"temperature", "\u22125 C", `temperature has a minus sign that is not a hyphen: write "-5 C"`},
		{"period", "1 hr", `period unit "hr" is not known: write "1 h"`},
		{"loss", "2.6", `loss needs a unit: write "2.6 dB"`},
		{"angle", "90°", `angle unit "°" is not known: write "90 deg"`},
		{"date", "31.03.2027", `date "31.03.2027" is not year-month-day in digits: write "2027-03-31"`},
		{"date", "2027-02-29", `date "2027-02-29" is not in the calendar`},
		{"conductor", "23 AWG", `conductor "23 AWG" does not say solid or stranded: write "23 AWG solid" or "23 AWG stranded"`},
		{"conductor", "26awg Stranded", `conductor "26awg Stranded" is not in the form that is read: write "26 AWG stranded"`},
		{"conductor", "2 AWG solid", `conductor gauge 2 AWG is not between 6 and 40: write "23 AWG solid"`},
	} {
		_, err := parsers[c.kind](c.text)
		if err == nil || err.Error() != c.want {
			t.Errorf("%s %q:\n got %v\nwant %s", c.kind, c.text, err, c.want)
		}
	}
}
