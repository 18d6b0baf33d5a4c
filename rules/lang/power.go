package lang

import (
	"strconv"
	"strings"

	"github.com/expr-lang/expr/ast"

	"wornfit/calc/quantity"
)

const pi = 3.14159265358979323846264338327950288

// power allows the constant exponents 1, 2 and 4; the remedy for another says
// how the same is written with them.
func (r *reader) power(n *ast.BinaryNode) *form {
	base := r.form(n.Left)
	if e, ok := n.Right.(*ast.IntegerNode); ok && (e.Value == 1 || e.Value == 2 || e.Value == 4) {
		return r.joined(Pow, base, r.form(e))
	}
	quiet := &reader{s: r.s} // the exponent's own faults are told as one
	f := r.joined(badForm, base, quiet.form(n.Right))
	exponent := f.args[1]
	f.args = f.args[:1]
	text := strings.ReplaceAll(r.s.piece(r.s.within(exponent.from, exponent.to)), " ", "")
	x := r.s.piece(r.s.within(base.from, base.to))
	from, to := r.s.within(exponent.from, exponent.to)
	r.tell(from, to, "the exponent "+text+"; it may be 1, 2 or 4", otherPower(x, text))
	return f
}

func otherPower(x, exponent string) string {
	if strings.ContainsAny(x, " +-*/") && !strings.HasPrefix(x, "(") {
		x = "(" + x + ")"
	}
	switch exponent {
	case "3":
		return "write " + x + "*" + x + "**2"
	case "0.5", ".5", "1/2":
		return "write sqrt(" + x + ")"
	case "-1", "-2", "-4":
		return "write 1/" + x + "**" + exponent[1:]
	}
	return "build it from **2, **4, sqrt() and products, or use a calculation"
}

// scales are the absolute temperatures: degrees above the scale's own zero.
// n of its steps are m kelvin.
var scales = map[string]struct{ zero, m, n float64 }{
	"degC": {273.15, 1, 1},
	"degF": {459.67, 5, 9},
}

// kelvin is an absolute temperature written in degrees, in K.
func kelvin(scale string, degrees float64) float64 {
	s := scales[scale]
	return (degrees + s.zero) * s.m / s.n
}

// temperature reads degC(40): the one place where any number may stand.
func (r *reader) temperature(name string, args []ast.Node, f *form) *form {
	if len(args) != 1 {
		r.tell(f.from, f.to, name+" takes one number", "write "+name+"(40)")
		f.op = badForm
		return f
	}
	text, sign := args[0], 1.0
	if u, ok := text.(*ast.UnaryNode); ok && u.Operator == "-" {
		text, sign = u.Node, -1
	}
	at := text.Location()
	degrees, err := strconv.ParseFloat(r.s.piece(at.From, at.To), 64)
	switch {
	case !isNumber(text) || err != nil:
		from, to := r.s.within(f.from, f.to)
		r.tell(from, to, name+" takes a plain number of degrees", "a temperature from a table is absolute already: write its name alone")
		f.op = badForm
	case kelvin(name, sign*degrees) < 0:
		r.tell(f.from, f.to, r.s.said(f)+" is colder than absolute zero", "write a temperature there can be")
		f.op = badForm
	default:
		f.op, f.value, f.typ.Dim = Const, kelvin(name, sign*degrees), quantity.TemperatureDim
		f.name = ""
	}
	return f
}

func isNumber(n ast.Node) bool {
	switch n.(type) {
	case *ast.IntegerNode, *ast.FloatNode:
		return true
	}
	return false
}
