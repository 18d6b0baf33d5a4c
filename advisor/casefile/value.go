package casefile

import (
	"cmp"
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/yamldoc"
)

// Value is what the case says of one thing.
type Value struct {
	Stated bool           // the key is there, if only to say `unknown`
	Known  bool           // there is a value
	Lo, Hi float64        // SI, equal unless typed as a range; the code of a word; 1 yes, 0 no
	Text   string         // as typed
	Typed  quantity.Typed // of a quantity: unit and digits as typed
	At     fault.Place
	Key    string
}

// Mid is the middle of a range, or the value.
func (v Value) Mid() float64 { return (v.Lo + v.Hi) / 2 }

// Yes reports whether a yes-no is known to be yes.
func (v Value) Yes() bool { return v.Known && v.Lo == 1 && v.Hi == 1 }

// entry reads a value as the vocabulary says it should be.
func (r *reader) entry(n yamldoc.Node, e *rules.Entry) Value {
	v := Value{Stated: n.Present(), Text: n.Text(), At: n.At(), Key: n.Key}
	if v.Text == "" || v.Text == "unknown" {
		return v
	}
	switch e.Type.Kind {
	case lang.Word:
		return word(n, v, e.Type.Words)
	case lang.YesNo:
		yes, ok := n.YesNo()
		if ok {
			v.Known, v.Lo = true, code(yes)
			v.Hi = v.Lo
		}
		return v
	case lang.Row:
		if list, checked := r.ids[e.Type.Table]; checked {
			n.Word(list...)
		}
		return v
	}
	return r.measured(n, e)
}

func code(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}

func word(n yamldoc.Node, v Value, list *lang.Words) Value {
	c, ok := list.Code(v.Text)
	if !ok {
		n.Word(append([]string{"unknown"}, list.List...)...)
		return v
	}
	v.Known, v.Lo, v.Hi = true, c, c
	return v
}

// measured reads a quantity and holds it to the entry's range. `none` is
// nothing of it, where the range begins at nothing.
func (r *reader) measured(n yamldoc.Node, e *rules.Entry) Value {
	if n.Text() == "none" && e.Range.Lo == 0 && e.Dim().Scale == quantity.Ratio {
		return Value{Stated: true, Known: true, Text: "none", At: n.At(), Key: n.Key}
	}
	if e.Dim() == quantity.HardnessHB {
		if t, hb, ok := brinell(n.Text()); ok {
			hb = hb.Meet(e.Range)
			return Value{Stated: true, Known: !hb.Empty(), Lo: hb.Lo, Hi: hb.Hi, Text: n.Text(), Typed: t, At: n.At(), Key: n.Key}
		}
	}
	v := r.typed(n, e.Dim(), e.Kind, e.Example, aSpread)
	if v.Known && !e.Range.Empty() && (v.Lo < e.Range.Lo || v.Hi > e.Range.Hi) {
		n.Fault(fmt.Sprintf("%s is outside the range of %s", v.Text, e.Name), within(e.Range, v.Typed.Unit))
		v.Known = false
	}
	return v
}

// within tells a range in the unit the person typed.
func within(i interval.I, u quantity.Unit) string {
	return strings.TrimSpace("it must lie between " + plain(u.From(i.Lo)) + " and " + plain(u.From(i.Hi)) + " " + u.Name)
}

// plain writes four figures, never a power of ten.
func plain(x float64) string {
	short, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 4, 64), 64) // of its own text there is no error
	return strconv.FormatFloat(short, 'f', -1, 64)
}

// The forms a value may be typed in.
var (
	oneNumber = []quantity.Form{quantity.Plain}
	aSpread   = []quantity.Form{quantity.Plain, quantity.Range, quantity.PlusMinus, quantity.Deviations, quantity.Class}
	halfWidth = []quantity.Form{quantity.Plain, quantity.Departure}
)

// quantity reads a number, or a range of numbers, with its unit.
func (r *reader) quantity(n yamldoc.Node, dim quantity.Dim, example string) Value {
	return r.typed(n, dim, "", example, aSpread)
}

// typed reads a quantity; kind, when it is known, tells an angle from a number.
func (r *reader) typed(n yamldoc.Node, dim quantity.Dim, kind, example string, forms []quantity.Form) Value {
	v := Value{Stated: n.Present(), Text: n.Text(), At: n.At(), Key: n.Key}
	switch {
	case v.Text == "" || v.Text == "unknown":
		return v
	case dim == quantity.Number && slip(n), dim != quantity.Number && r.bare(n, cmp.Or(example, usualExample[dim])):
		return v
	}
	t, err := parse(v.Text, dim, kind)
	if err == nil {
		err = t.Is(forms...)
	}
	if err != nil {
		refused(n, err)
		return v
	}
	if t.Dim == quantity.MoneyDim || t.Dim == quantity.RateDim {
		r.money[strings.SplitN(t.Unit.Name, "/", 2)[0]]++
	}
	v.Known, v.Lo, v.Hi, v.Typed = true, t.Low, t.High, t
	return v
}

func parse(text string, dim quantity.Dim, kind string) (quantity.Typed, error) {
	if kind != "" {
		return quantity.ParseKind(text, kind)
	}
	return quantity.Parse(text, dim)
}

func refused(n yamldoc.Node, err error) {
	var no *quantity.Refusal
	if errors.As(err, &no) {
		n.Fault(no.Says, no.Remedy)
		return
	}
	n.Fault(err.Error(), "")
}

var (
	bareNumber = regexp.MustCompile(`^[-+±]?[0-9][0-9_.,/ ]*$|^[-+±]?\.[0-9]+$`)
	octal      = regexp.MustCompile(`^[-+]?0[0-9]+$`)
	unitWord   = regexp.MustCompile(`^[A-Za-zµ°%"'][A-Za-z0-9/µ°²-]*`)
)

// bare tells a number without a unit, and where the unit may have gone.
func (r *reader) bare(n yamldoc.Node, example string) bool {
	t := n.Text()
	if !bareNumber.MatchString(t) {
		return false
	}
	lost := strings.TrimSpace(strings.TrimLeft(n.Comment(), "# "))
	switch unit := unitWord.FindString(lost); {
	case unit != "":
		n.Fault(fmt.Sprintf("%s has no unit: # begins a comment, so %q is not read", t, lost), "write "+t+" "+unit)
	case octal.MatchString(t):
		n.Fault(t+" has no unit, and some programs read a leading 0 as octal", "write it like "+example+", without the leading 0")
	case strings.Contains(t, "_"):
		n.Fault(t+" has no unit, and _ is not part of a number", "write it like "+example+", digits only")
	default:
		n.Fault(t+" has no unit", "write the unit, like "+example)
	}
	return true
}

// usualExample is what is shown of a quantity whose entry gives no example.
var usualExample = map[quantity.Dim]string{
	quantity.LengthDim: "0.02 mm", quantity.TimeDim: "5 days", quantity.MoneyDim: "90 EUR", quantity.HardnessHB: "300 HB",
}

// slip tells a number that reads two ways even where no unit is asked for.
func slip(n yamldoc.Node) bool {
	switch t := n.Text(); {
	case octal.MatchString(t):
		n.Fault(t+": some programs read a leading 0 as octal", "write it without the leading 0")
	case strings.Contains(t, "_"):
		n.Fault(t+": _ is not part of a number", "write digits only")
	default:
		return false
	}
	return true
}

// inBlock reads a number of a block that states its unit once.
func (r *reader) inBlock(n yamldoc.Node, u quantity.Unit) Value {
	v := Value{Stated: n.Present(), Text: n.Text(), At: n.At(), Key: n.Key}
	if v.Text == "" || v.Text == "unknown" || slip(n) {
		return v
	}
	t, err := quantity.ParseIn(v.Text, u)
	if err == nil {
		err = t.Is(oneNumber...)
	}
	if err != nil {
		refused(n, err)
		return v
	}
	v.Known, v.Lo, v.Hi, v.Typed = true, t.Low, t.High, t
	return v
}
