package standard

import "strings"

// Euroclass is a class of reaction to fire of cable, EN 13501-6, with the additional
// classes for smoke, flaming droplets and acidity that it states. The zero value is no
// class. Two Euroclasses compare with ==.
type Euroclass struct {
	reaction, smoke, droplets, acidity uint8 // index into the tables below, 0: not stated
}

// The classes, the strictest first. s1a and s1b are s1 with the light transmittance
// stated as well, so each is stricter than s1 alone.
var (
	reactions = []string{1: "Aca", 2: "B1ca", 3: "B2ca", 4: "Cca", 5: "Dca", 6: "Eca", 7: "Fca"}
	smokes    = []string{1: "s1a", 2: "s1b", 3: "s1", 4: "s2", 5: "s3"}
	droplets  = []string{1: "d0", 2: "d1", 3: "d2"}
	acidities = []string{1: "a1", 2: "a2", 3: "a3"}
)

// strictestPart and laxestPart bound the classes that have additional classes.
const (
	strictestPart = 2 // B1ca
	laxestPart    = 5 // Dca
)

var euroclassSource = Source{Body: "EN", Edition: "13501-6", Clause: "classes of reaction to fire", Confidence: Confirmed}

// EuroclassSource returns where the order of the classes stands.
func EuroclassSource() Source { return euroclassSource }

// ParseEuroclass reads "Cca-s1b,d2,a2", "Dca-s2,d2" or "Eca": the class, and then the
// additional classes that are stated, in the order s, d, a. Aca, Eca and Fca have no
// additional classes. The error is a *unit.Error.
func ParseEuroclass(s string) (Euroclass, error) {
	const noun = "Euroclass"
	head, tail, parts := strings.Cut(s, "-")
	i, err := indexOf(reactions, noun, head)
	if err != nil {
		return Euroclass{}, err
	}
	e := Euroclass{reaction: uint8(i)}
	if !parts {
		return e, nil
	}
	if !e.hasParts() {
		return Euroclass{}, refuse(s, noun+" "+head+" has no additional classes", head)
	}
	for part := range strings.SplitSeq(tail, ",") {
		next, ok := e.with(part)
		if !ok {
			return Euroclass{}, refuse(s, noun+" "+shown(s)+" has "+shown(part)+" where s, d and a classes follow in that order", "Cca-s1b,d2,a2")
		}
		e = next
	}
	return e, nil
}

// hasParts reports whether the class may state additional classes.
func (e Euroclass) hasParts() bool { return e.reaction >= strictestPart && e.reaction <= laxestPart }

// with adds one additional class; false where it is unknown, repeated or out of order.
func (e Euroclass) with(part string) (Euroclass, bool) {
	if i, err := indexOf(smokes, "", part); err == nil {
		free := e.smoke == 0 && e.droplets == 0 && e.acidity == 0
		e.smoke = uint8(i)
		return e, free
	}
	if i, err := indexOf(droplets, "", part); err == nil {
		free := e.droplets == 0 && e.acidity == 0
		e.droplets = uint8(i)
		return e, free
	}
	i, err := indexOf(acidities, "", part)
	free := err == nil && e.acidity == 0
	e.acidity = uint8(i)
	return e, free
}

// String returns the class as it is read.
func (e Euroclass) String() string {
	text, sep := wordOf(reactions, int(e.reaction)), "-"
	for _, part := range []string{wordOf(smokes, int(e.smoke)), wordOf(droplets, int(e.droplets)), wordOf(acidities, int(e.acidity))} {
		if part != "" {
			text += sep + part
			sep = ","
		}
	}
	return text
}

// IsZero reports whether there is no class.
func (e Euroclass) IsZero() bool { return e == Euroclass{} }

// Shortfall is one part of a class that does not reach the least that is asked.
type Shortfall struct {
	Part  string // "reaction to fire", "smoke", "flaming droplets", "acidity"
	Has   string // "Eca", "s2", "not stated"
	Needs string // "Cca", "s1b"
}

// Short lists the parts of e that fall short of the least class, in the order class,
// s, d, a; it is empty where e meets it. An additional class that the least class does
// not state is not asked for; one that e does not state falls short, except on Aca,
// which does not burn and has none.
func (e Euroclass) Short(least Euroclass) []Shortfall {
	var out []Shortfall
	out = shortPart(out, "reaction to fire", reactions, e.reaction, least.reaction)
	if e.reaction == 1 {
		return out
	}
	out = shortPart(out, "smoke", smokes, e.smoke, least.smoke)
	out = shortPart(out, "flaming droplets", droplets, e.droplets, least.droplets)
	return shortPart(out, "acidity", acidities, e.acidity, least.acidity)
}

// shortPart appends a shortfall where has is laxer than needs or not stated.
func shortPart(out []Shortfall, part string, words []string, has, needs uint8) []Shortfall {
	if needs == 0 || (has != 0 && has <= needs) {
		return out
	}
	stated := wordOf(words, int(has))
	if stated == "" {
		stated = "not stated"
	}
	return append(out, Shortfall{Part: part, Has: stated, Needs: wordOf(words, int(needs))})
}
