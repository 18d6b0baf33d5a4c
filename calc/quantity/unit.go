package quantity

import "math/big"

// Unit is one unit of the table: a name as it is printed and the kind of
// quantity it measures. The zero Unit is the plain number. Find one with
// UnitNamed.
type Unit struct {
	Name string
	Dim  Dim
	row  *unitRow // nil: factor 1, zero 0
}

// unitRow is one line of the table: SI = (value + zero) * factor, exactly.
type unitRow struct {
	name     string // as printed
	dim      Dim
	factor   *big.Rat // SI for one of the unit
	zero     *big.Rat // added before the factor; nil for all but °C and °F
	fraction bool     // shops write it in fractions, so a dash between whole numbers is unclear
	inches   bool     // a length of the inch system
	small    bool     // used for deviations rather than sizes
	kind     string   // word of Kinds, where two kinds share a Dim and the unit tells them apart
	spelled  []string // further spellings, after tidyUnit
}

func (r *unitRow) unit() Unit { return Unit{Name: r.name, Dim: r.dim, row: r} }

// Factor is the SI value of one of the unit, the zero of °C and °F left aside.
func (u Unit) Factor() float64 {
	f, _ := u.factor().Float64()
	return f
}

// SI is v of the unit in SI; for °C and °F as temperatures the zero counts. It
// works in exact fractions, rounded once: for reading and printing, not for the
// inside of a search.
func (u Unit) SI(v float64) float64 {
	r := new(big.Rat).SetFloat64(v)
	if r == nil {
		return v // an infinity or not a number stays what it is
	}
	f, _ := u.exactSI(r).Float64()
	return f
}

// From is an SI value in the unit: the inverse of SI.
func (u Unit) From(si float64) float64 {
	r := new(big.Rat).SetFloat64(si)
	if r == nil {
		return si
	}
	r.Quo(r, u.factor())
	if u.row != nil && u.row.zero != nil {
		r.Sub(r, u.row.zero)
	}
	f, _ := r.Float64()
	return f
}

var one = big.NewRat(1, 1)

func (u Unit) factor() *big.Rat {
	if u.row == nil {
		return one
	}
	return u.row.factor
}

func (u Unit) exactSI(v *big.Rat) *big.Rat {
	out := new(big.Rat).Set(v)
	if u.row != nil && u.row.zero != nil {
		out.Add(out, u.row.zero)
	}
	return out.Mul(out, u.factor())
}

func (u Unit) fractions() bool { return u.row != nil && u.row.fraction }

// small units are used for deviations, so a size must repeat its unit.
func (u Unit) small() bool { return u.row != nil && u.row.small }

func (u Unit) kind() string {
	if u.row != nil && u.row.kind != "" {
		return u.row.kind
	}
	return u.Dim.String()
}

// UnitNamed finds a unit by any of its spellings. want settles the spellings
// that stand for two kinds: K, °C and °F are a temperature or a change.
func UnitNamed(name string, want Dim) (Unit, error) {
	folded, bad := fold(name)
	if bad != nil {
		return Unit{}, bad
	}
	u, bad := wish{dim: want}.unit(folded, name)
	if bad != nil {
		return Unit{}, bad
	}
	return u, nil
}

// AnyUnit finds a unit by name alone: °C and °F are temperatures, K is a change
// of temperature, as in the rule language.
func AnyUnit(name string) (Unit, error) {
	folded, bad := fold(name)
	if bad != nil {
		return Unit{}, bad
	}
	u, bad := wish{any: true}.unit(folded, name)
	if bad != nil {
		return Unit{}, bad
	}
	return u, nil
}

// must is a unit of the table this package itself relies on.
func must(name string, dim Dim) Unit {
	for _, r := range bySpelling[name] {
		if r.dim == dim {
			return r.unit()
		}
	}
	panic("quantity: no unit " + name)
}
