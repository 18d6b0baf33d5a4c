package quantity

import (
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"
)

// No size a person types is longer: our choice. The last two also keep every text, written
// again by Typed.String, within the first.
const (
	longest        = 64 // runes of a text
	mostDigits     = 12 // of a decimal: a nanometre in a kilometre
	fractionDigits = 4  // of each number of a fraction
)

// sameMark maps what keyboards, word processors and drawings write to the one
// mark the parser reads.
var sameMark = map[rune]string{
	'−': "-", '–': "-", '—': "-", '‐': "-", '‑': "-", '‒': "-", '－': "-", '﹣': "-",
	'“': `"`, '”': `"`, '″': `"`, '‟': `"`, '＂': `"`, '’': "'", '‘': "'", '′': "'",
	'µ': "u", 'μ': "u", '·': " ", '⋅': " ", '²': "^2", '³': "^3", '⁄': "/", '∕': "/",
	'º': "°", '˚': "°", '℃': "°C", '℉': "°F", 'K': "K", '＋': "+",
	'⌀': "⌀", 'Ø': "⌀", 'ø': "⌀", '∅': "⌀", 'φ': "⌀", 'Φ': "⌀",
	'½': "1/2", '⅓': "1/3", '⅔': "2/3", '¼': "1/4", '¾': "3/4", '⅛': "1/8", '⅜': "3/8", '⅝': "5/8", '⅞': "7/8",
	'\t': " ",
}

const vulgar = "½⅓⅔¼¾⅛⅜⅝⅞"

// fold brings a text to one way of writing: plain dashes, quotes and micro
// signs, single spaces, built fractions spelled out.
func fold(text string) (string, *Refusal) {
	if !utf8.ValidString(text) {
		return "", refuse(text, "write it again in plain letters and digits", "%q is not readable text", text)
	}
	if utf8.RuneCountInString(text) > longest {
		return "", refuse(text, "write the number and its unit only", "%q... is longer than %d characters", string([]rune(text)[:20]), longest)
	}
	var b strings.Builder
	prev := ' '
	for _, r := range text {
		s, known := sameMark[r]
		switch {
		case strings.ContainsRune(vulgar, r):
			if prev == '-' {
				b.WriteString(s + " ")
			} else {
				b.WriteString(" " + s + " ")
			}
		case known:
			b.WriteString(s)
		case unicode.Is(unicode.Zs, r):
			b.WriteByte(' ')
		case unicode.IsControl(r) || unicode.Is(unicode.Cf, r):
			return "", refuse(text, "write it again on one line", "%q holds a character that cannot be seen", text)
		default:
			b.WriteRune(r)
		}
		prev = r
	}
	out := strings.Join(strings.Fields(b.String()), " ")
	for _, pm := range []string{"+/-", "+ / -", "+-"} {
		out = strings.ReplaceAll(out, pm, "±")
	}
	if out == "" {
		return "", refuse(text, "write a number and its unit, such as 25.4 mm or 1-3/16 in", "nothing is written")
	}
	return out, nil
}

// figure is one number as typed.
type figure struct {
	value  *big.Rat
	places int  // decimals typed; -1 a fraction
	plus   bool // a sign stood before it
}

func (f figure) whole() bool { return f.places == 0 }

// String writes the figure so that it reads back exactly.
func (f figure) String() string {
	if f.places >= 0 {
		return f.value.FloatString(f.places)
	}
	if f.value.IsInt() {
		return f.value.Num().String()
	}
	abs := new(big.Rat).Abs(f.value)
	whole, rest := new(big.Int).QuoRem(abs.Num(), abs.Denom(), new(big.Int))
	out := rest.String() + "/" + abs.Denom().String()
	if whole.Sign() > 0 {
		out = whole.String() + "-" + out
	}
	if f.value.Sign() < 0 {
		out = "-" + out
	}
	return out
}

// scanner walks a folded text.
type scanner struct {
	text string // as typed, for refusals
	s    string
	at   int
}

func (p *scanner) rest() string { return p.s[p.at:] }
func (p *scanner) end() bool    { return p.at >= len(p.s) }

func (p *scanner) peek() byte {
	if p.end() {
		return 0
	}
	return p.s[p.at]
}

func (p *scanner) space() {
	for p.peek() == ' ' {
		p.at++
	}
}

// take moves over a mark if it stands here.
func (p *scanner) take(mark string) bool {
	if strings.HasPrefix(p.rest(), mark) {
		p.at += len(mark)
		return true
	}
	return false
}

func digit(b byte) bool { return b >= '0' && b <= '9' }

// figure reads a number with an optional sign.
func (p *scanner) figure() (figure, *Refusal) {
	sign := p.peek()
	signed := sign == '+' || sign == '-'
	if signed {
		p.at++
		p.space()
	}
	f, bad := p.number()
	if bad != nil {
		return f, bad
	}
	f.plus = signed
	if sign == '-' {
		f.value.Neg(f.value)
	}
	return f, nil
}

// number reads digits, a decimal or a fraction, without a sign.
func (p *scanner) number() (figure, *Refusal) {
	start := p.at
	for digit(p.peek()) || strings.IndexByte(".,_", p.peek()) >= 0 && !p.end() {
		p.at++
	}
	run := p.s[start:p.at]
	f, bad := p.decimal(run)
	if bad != nil {
		return f, bad
	}
	if e := p.peek(); (e == 'e' || e == 'E') && p.at+1 < len(p.s) && (digit(p.s[p.at+1]) || strings.IndexByte("+-", p.s[p.at+1]) >= 0) {
		return f, refuse(p.text, "write the number out, such as 1000 mm, or a class with a space before it, such as 25 e8",
			"%q has a power of ten", p.text)
	}
	if f.places != 0 {
		return f, nil
	}
	return p.fraction(f)
}

// decimal reads a run of digits and marks.
func (p *scanner) decimal(run string) (figure, *Refusal) {
	points, commas := strings.Count(run, "."), strings.Count(run, ",")
	whole, part, marked := strings.Cut(strings.Replace(run, ",", ".", 1), ".")
	switch {
	case run == "":
		return figure{}, p.noNumber()
	case strings.Contains(run, "_"):
		return figure{}, refuse(p.text, "write "+strings.ReplaceAll(run, "_", ""), "%q has an underscore in the number", p.text)
	case len(zero(whole))+len(part) > mostDigits:
		return figure{}, refuse(p.text, "write the digits a gauge can show, at most 12", "%q has a number of %d digits", p.text, len(zero(whole))+len(part))
	case points+commas > 1:
		return figure{}, refuse(p.text, "write one decimal point and no mark between thousands, such as 1234.5, and a range as 0.8 to 1.5 mm",
			"%q has more than one point or comma in a number", p.text)
	case marked && part == "":
		return figure{}, refuse(p.text, "write "+zero(whole)+" or "+zero(whole)+".0", "%q ends a number with a point", p.text)
	case commas == 1 && len(part) == 3 && len(whole) >= 1 && len(whole) <= 3 && whole[0] != '0':
		return figure{}, refuse(p.text, "write "+whole+"."+part+" for decimals or "+whole+part+" for thousands",
			"the comma in %q may mark thousands or decimals", p.text)
	case len(whole) > 1 && whole[0] == '0':
		return figure{}, refuse(p.text, "write "+zero(strings.TrimLeft(whole, "0"))+tail(marked, part), "%q has a number that begins with a nought too many", p.text)
	}
	v, ok := new(big.Rat).SetString(zero(whole) + tail(marked, part))
	if !ok {
		return figure{}, p.noNumber()
	}
	return figure{value: v, places: len(part)}, nil
}

func zero(whole string) string {
	if whole == "" {
		return "0"
	}
	return whole
}

func tail(marked bool, part string) string {
	if !marked {
		return ""
	}
	return "." + part
}

// fraction completes a whole number that goes on as 3/16, 1-3/16 or 1 3/16.
func (p *scanner) fraction(whole figure) (figure, *Refusal) {
	numer, mixed := whole.value, false
	look := p.at
	if c := p.peek(); c == '-' || c == ' ' {
		n := look + 1
		for n < len(p.s) && digit(p.s[n]) {
			n++
		}
		if n == look+1 || n >= len(p.s) || p.s[n] != '/' {
			return whole, nil
		}
		digits := p.s[look+1 : n]
		if n+1 >= len(p.s) || !digit(p.s[n+1]) {
			return whole, nil
		}
		if len(digits) > 1 && digits[0] == '0' {
			return whole, refuse(p.text, "write the fraction without it, such as 3/16", "%q has a fraction that begins with a nought", p.text)
		}
		numer, mixed, look = rat(digits), true, n
	}
	if look >= len(p.s) || p.s[look] != '/' || look+1 >= len(p.s) || !digit(p.s[look+1]) {
		return whole, nil
	}
	n := look + 1
	for n < len(p.s) && digit(p.s[n]) {
		n++
	}
	below := p.s[look+1 : n]
	if n < len(p.s) && strings.IndexByte(".,_", p.s[n]) >= 0 {
		return whole, refuse(p.text, "write a fraction of whole numbers, such as 1-3/16 in, or a decimal", "%q has a decimal inside a fraction", p.text)
	}
	denom := rat(below)
	switch {
	case len(below) > fractionDigits || tooLong(numer) || tooLong(whole.value):
		return whole, refuse(p.text, "write a fraction such as 1-3/16 in, or a decimal", "%q has a fraction of more than %d digits", p.text, fractionDigits)
	case denom.Sign() == 0:
		return whole, refuse(p.text, "write what it is divided by, such as 1/16 in", "%q divides by nought", p.text)
	case below[0] == '0':
		return whole, refuse(p.text, "write the fraction without it, such as 3/16", "%q has a fraction that begins with a nought", p.text)
	case mixed && numer.Cmp(denom) >= 0:
		return whole, refuse(p.text, "write a fraction smaller than one after a whole number, such as 1-3/16 in",
			"the fraction in %q is not smaller than one", p.text)
	}
	p.at = n
	v := new(big.Rat).Quo(numer, denom)
	if mixed {
		v.Add(v, whole.value)
	}
	return figure{value: v, places: -1}, nil
}

func tooLong(r *big.Rat) bool { return len(r.Num().String()) > fractionDigits }

func (p *scanner) noNumber() *Refusal {
	low := strings.ToLower(p.rest())
	for _, w := range []string{"nan", "inf", "unknown"} {
		if strings.HasPrefix(low, w) {
			return refuse(p.text, "write a size, such as 25.4 mm, or leave the line out if it is not known", "%q is no number", p.text)
		}
	}
	if p.end() {
		return refuse(p.text, "write the number and its unit, such as 25.4 mm", "%q ends where a number should stand", p.text)
	}
	return refuse(p.text, "write the number first, then its unit, such as 25.4 mm or 20 HRC", "%q has no number where one should stand, at %q", p.text, p.rest())
}
