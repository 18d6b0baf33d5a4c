package quantity

import (
	"fmt"
	"strings"
	"unicode"
)

// wish is what the place a text stands in wants of it.
type wish struct {
	any   bool   // no kind is wanted
	dim   Dim    // the kind wanted
	kind  string // its word, where the Dim has two; "" if the Dim is enough
	block *Unit  // a unit stated once for a whole block: bare numbers are in it
}

func (w wish) name() string {
	if w.kind != "" {
		return w.kind
	}
	return w.dim.String()
}

// unclear are the spellings that mean different things to different people, or
// that the tool does not work in, with what to write.
var unclear = map[string][2]string{
	"mil":   {"is a thousandth of an inch to some and a millimetre to others", "write thou or mm"},
	"mils":  {"is thousandths of an inch to some and millimetres to others", "write thou or mm"},
	"ton":   {"may be a short, a long or a metric ton", "write short-ton-force, long-ton-force or tonne-force for a force, kg or lb for a mass"},
	"tons":  {"may be short, long or metric tons", "write short-ton-force, long-ton-force or tonne-force for a force, kg or lb for a mass"},
	"tonne": {"is a mass to some and a force to others", "write kg for a mass, tonne-force for a force"},
	"t":     {"may be a tonne, a ton or a tenth", "write kg, tonne-force or tenths"},
	"'":     {"may be feet or minutes of arc", "write ft, in or deg"},
	"lb ft": {"mixes a mass with a torque", "write lbf ft"},
	"lb-ft": {"mixes a mass with a torque", "write lbf ft"},
	"ft lb": {"mixes a mass with a torque", "write lbf ft"},
	"ft-lb": {"mixes a mass with a torque", "write lbf ft"},
	"lb in": {"mixes a mass with a torque", "write lbf in"},
	"lb-in": {"mixes a mass with a torque", "write lbf in"},
	"in lb": {"mixes a mass with a torque", "write lbf in"},
	"in-lb": {"mixes a mass with a torque", "write lbf in"},
	"kg m":  {"mixes a mass with a torque", "write N m"},
	"HRB":   {"is a scale this tool does not work in", "write the hardness in HB, HRC or HV"},
	"HRA":   {"is a scale this tool does not work in", "write the hardness in HB, HRC or HV"},
	"HR":    {"names no Rockwell scale", "write HRC, HB or HV"},
	"u":     {"is half a unit", "write um"},
	"PS":    {"is a metric horsepower", "write kW or hp"},
	"month": {"has no fixed length", "write weeks or days"}, "months": {"has no fixed length", "write weeks or days"},
	"€": {"is not read", "write EUR"}, "£": {"is not read", "write GBP"}, "$": {"may be several currencies", "write USD, CAD or AUD"},
}

// tidyUnit gives a unit text its one form: no spaces about a slash, no caret,
// degC for every way of writing it.
func tidyUnit(s string) string {
	s = strings.TrimSpace(strings.ReplaceAll(s, "*", " "))
	s = strings.ReplaceAll(s, "^", "")
	for _, r := range [][2]string{{" /", "/"}, {"/ ", "/"}, {"° ", "°"}, {"deg C", "degC"}, {"deg F", "degF"}} {
		s = strings.ReplaceAll(s, r[0], r[1])
	}
	return strings.Join(strings.Fields(s), " ")
}

// unit finds the unit a folded word stands for; text is the whole text as typed.
func (w wish) unit(word, text string) (Unit, *Refusal) {
	name := tidyUnit(word)
	if why, ok := unclear[name]; ok {
		return Unit{}, refuse(text, why[1], "the unit %q in %q %s", word, text, why[0])
	}
	rows := bySpelling[name]
	if len(rows) == 0 {
		if u, ok := money(name); ok {
			return w.check(u, word, text)
		}
		return Unit{}, w.unknown(name, word, text)
	}
	for _, r := range rows {
		if !w.any && r.dim == w.dim && (w.kind == "" || w.suits(r.unit())) {
			return r.unit(), nil
		}
	}
	pick := rows[0]
	for _, r := range rows { // K alone is a change of temperature, as in rules
		if w.any && name == "K" && r.dim == ChangeDim {
			pick = r
		}
	}
	return w.check(pick.unit(), word, text)
}

// check refuses a unit of the wrong kind.
func (w wish) check(u Unit, word, text string) (Unit, *Refusal) {
	if w.any || u.Dim == w.dim && (w.kind == "" || w.suits(u)) {
		return u, nil
	}
	if u.Name == "lb" && w.dim == ForceDim {
		return u, refuse(text, "write lbf for a force", "%q in %q is a mass, a force is wanted", word, text)
	}
	if u.Name == "kg" && w.dim == ForceDim {
		return u, refuse(text, "write kgf or N for a force", "%q in %q is a mass, a force is wanted", word, text)
	}
	return u, refuse(text, writeIn("", w.name()), "%q in %q is a unit of %s, %s is wanted", word, text, u.kind(), w.name())
}

// suits tells apart the kinds that share a Dim: an angle from a number, an
// energy from a torque. A speed may be written in any unit of speed or wear.
func (w wish) suits(u Unit) bool {
	switch w.kind {
	case "angle", "energy", "line-heat":
		return u.kind() == w.kind
	case "number", "torque", "force":
		return u.kind() == w.kind || u.Name == "%"
	}
	return true
}

// unknown names the nearest unit to one that is not in the table.
func (w wish) unknown(name, word, text string) *Refusal {
	if word == "" {
		return w.missing(text)
	}
	if name == "" { // stars and carets alone
		return refuse(text, "write a unit such as mm or in after the number", "%q in %q is no unit", word, text)
	}
	if c := name[0]; digit(c) || c == '.' || c == ',' {
		return refuse(text, "write one number without spaces, a fraction as 1-3/16, a range as 0.8 to 1.5 mm", "%q has a second number, %q", text, word)
	}
	remedy := "write a unit such as mm, in, N, lbf, MPa, psi, °C, °F, rpm, h, kg or EUR"
	first, junk, more := strings.Cut(name, " ")
	if near := nearest(name); near != "" {
		remedy = "write " + near
	} else if more && len(bySpelling[first]) > 0 {
		remedy = fmt.Sprintf("write the unit %s alone, without %q", first, junk)
	} else if !w.any {
		remedy = writeIn("", w.name())
	}
	return refuse(text, remedy, "the unit %q in %q is not known", word, text)
}

// missing refuses a number without a unit.
func (w wish) missing(text string) *Refusal {
	kind := w.name()
	if w.any {
		kind = "length"
	}
	return refuse(text, writeIn(strings.TrimSpace(text), kind), "%q has no unit", text)
}

// nearest is a unit spelled like name but for capitals or one letter.
func nearest(name string) string {
	best := ""
	for i := range units {
		for _, s := range append([]string{units[i].name}, units[i].spelled...) {
			if strings.EqualFold(s, name) {
				return units[i].name
			}
			if best == "" && len(s) > 2 && oneApart(s, name) {
				best = s
			}
		}
	}
	return best
}

// oneApart reports whether one letter more, less or other turns a into b; a
// digit or a mark that differs makes another unit, not a slip.
func oneApart(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	if len(b)-len(a) > 1 {
		return false
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	if i < len(b) && !unicode.IsLetter(rune(b[i])) || i < len(a) && !unicode.IsLetter(rune(a[i])) {
		return false
	}
	if len(a) == len(b) {
		return i < len(a) && a[i+1:] == b[i+1:]
	}
	return a[i:] == b[i+1:]
}

// perWhat is what money may be stated for: a time or a mass, and its size.
var perWhat = map[string]unitRow{
	"h": {dim: RateDim, factor: hour}, "hour": {dim: RateDim, factor: hour}, "min": {dim: RateDim, factor: minute},
	"day": {dim: RateDim, factor: day}, "week": {dim: RateDim, factor: product(rat("7"), day)}, "year": {dim: RateDim, factor: year},
	"kg": {dim: PriceByMassDim, factor: one}, "lb": {dim: PriceByMassDim, factor: pound},
}

// money reads a currency, three capital letters, or a rate such as EUR/h
// or EUR/kg. A
// unit written in capitals by mistake is none.
func money(name string) (Unit, bool) {
	code, per, rated := strings.Cut(name, "/")
	if len(code) != 3 || strings.Trim(code, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "" || nearestCapitals(code) {
		return Unit{}, false
	}
	if !rated {
		return Unit{Name: code, Dim: MoneyDim}, true
	}
	p, ok := perWhat[per]
	if !ok {
		return Unit{}, false
	}
	row := &unitRow{name: name, dim: p.dim, factor: quotient(one, p.factor)}
	return row.unit(), true
}

// nearestCapitals reports whether code is a unit but for its capitals: RPM, MPA.
func nearestCapitals(code string) bool {
	for i := range units {
		for _, s := range append([]string{units[i].name}, units[i].spelled...) {
			if strings.EqualFold(s, code) {
				return true
			}
		}
	}
	return code == "NAN" || code == "INF"
}
