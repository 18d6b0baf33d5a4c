package lang_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"wornfit/calc/quantity"
	"wornfit/rules/lang"
	"wornfit/rules/tape"
)

// What we lower is what expr's VM runs: the same value to 1e-12, the same
// verdict, over a thousand draws of every good expression.
func TestOurReadingIsExprs(t *testing.T) {
	for _, source := range lang.GoodExpressions {
		s, faults := lang.Parse(lang.TextOf(source))
		e, more := s.Infer(lang.Bench())
		if len(faults)+len(more) > 0 {
			t.Fatal(append(faults, more...))
		}
		judge, err := s.Referee(lang.Bench())
		if err != nil {
			t.Fatal(err)
		}
		b := tape.NewBuilder()
		root, err := b.Lower(e, func(name string) (tape.Node, error) { return b.Slot(name), nil })
		if err != nil {
			t.Fatal(err)
		}
		program := b.Build()
		reg := make([]float64, program.Len())
		program.Start(reg)
		rng := rand.New(rand.NewPCG(7, uint64(len(source))))
		decided := 0
		for range 1000 {
			values := map[string]any{}
			judge.Names(func(name string, of lang.Type) {
				code, value := drawn(rng, of)
				values[name] = value
				if n, ok := program.Slot(name); ok {
					reg[n] = code
				}
			})
			program.Run(reg)
			want, err := judge.Run(values)
			if errors.Is(err, lang.ErrUndecided) {
				continue
			}
			if err != nil {
				t.Fatal(err)
			}
			decided++
			if !same(reg[root], want) {
				t.Errorf("%s: ours %v, expr's %v at %v", source, reg[root], want, values)
				break
			}
		}
		if decided < 300 {
			t.Errorf("%s: only %d of 1000 draws were finite", source, decided)
		}
	}
}

// drawn is a value of a type, as a program's register and as the judge has it.
func drawn(rng *rand.Rand, of lang.Type) (code float64, value any) {
	switch of.Kind {
	case lang.YesNo:
		yes := rng.IntN(2) == 1
		if yes {
			code = 1
		}
		return code, yes
	case lang.Word:
		i := rng.IntN(len(of.Words.List))
		return float64(i), of.Words.List[i]
	}
	size := map[quantity.Dim]float64{
		quantity.LengthDim: 0.1, quantity.StressDim: 2e9, quantity.ForceDim: 1e4, quantity.TorqueDim: 1e3,
		quantity.PerStressDim: 1e-10, quantity.ExpansionDim: 2e-5, quantity.TemperatureDim: 500, quantity.ChangeDim: 100,
		quantity.TimeDim: 1e4, quantity.RotationDim: 50, quantity.AreaDim: 0.01,
	}[of.Dim]
	if size == 0 {
		size = 3
	}
	v := size * (0.01 + rng.Float64())
	return v, v
}

func same(ours float64, exprs any) bool {
	switch want := exprs.(type) {
	case bool:
		return (ours > 0) == want
	case float64:
		return math.Abs(ours-want) <= 1e-12*math.Max(math.Abs(ours), math.Abs(want))
	}
	return false
}
