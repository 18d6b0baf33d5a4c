package lang

import (
	"math"
	"sort"
	"strings"
	"testing"

	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	"wornfit/calc/quantity"
	"wornfit/rules/fault"
)

// shop is a scope with the names the tests speak of.
type shop struct {
	names map[string]Type
	funcs map[string]*Func
}

func (s shop) Name(n string) (Type, bool)  { t, ok := s.names[n]; return t, ok }
func (s shop) Func(n string) (*Func, bool) { f, ok := s.funcs[n]; return f, ok }
func (s shop) Near() []string {
	var out []string
	for n := range s.names {
		out = append(out, n)
	}
	sort.Strings(out)
	return out
}

var (
	shockWords   = &Words{Name: "duty.shock", List: []string{"none", "light", "heavy"}}
	purposeWords = &Words{Name: "purpose", List: []string{"running", "oscillating", "sliding"}}
	speedWords   = &Words{Name: "speed", List: []string{"slow", "fast"}}
	pairWords    = &Words{Name: "pair", List: []string{"good", "fair", "bad"}}
	length       = Type{Dim: quantity.LengthDim}
	number       = Type{}
	fact         = Type{Kind: YesNo}
)

// bench is the scope of every test: names by kind.
func bench() shop {
	s := shop{names: map[string]Type{}, funcs: map[string]*Func{}}
	add := func(t Type, names string) {
		for _, n := range strings.Fields(names) {
			s.names[n] = t
		}
	}
	add(length, `bush_bore bush_outside hub_bore shaft_size undercut_size build_up_size least_cut least_wall bush_wall
		wall close_in tight tightest loosest hot_loss clean_up coat least_coat most_coat bore_small bore_large
		shaft_large shaft_small hub.outside hub.smallest hub.largest shaft.smallest shaft.largest shaft.bore
		shaft.least_strong datum.offset turner.tolerance fit.length joint.inner_size joint.outer_size joint.length
		class.least class.most it.tolerance stroke`)
	add(number, `grip_margin part_of_yield press_reserve act_ratio joint.inner_hoop joint.outer_hoop
		shaft.material.nu hub.material.nu bush_material.nu`)
	add(Type{Dim: quantity.StressDim}, `bush.pressure pressure shaft.material.E hub.material.E bush_material.E
		joint.inner_material.yield joint.outer_material.yield`)
	add(Type{Dim: quantity.PerStressDim}, `joint.inner_give joint.outer_give hub_give`)
	add(Type{Dim: quantity.ForceDim}, `grip_thrust force joint.thrust duty.load duty.thrust shop.press.force`)
	add(Type{Dim: quantity.TorqueDim}, `grip_torque joint.torque seat_torque`)
	add(Type{Dim: quantity.ExpansionDim}, `shaft_face.expansion bore_face.expansion`)
	add(Type{Dim: quantity.ChangeDim}, `duty.temperature_rise`)
	add(Type{Dim: quantity.TemperatureDim}, `duty.temperature shop.oven hot`)
	add(Type{Dim: quantity.TimeDim}, `set_up cut`)
	add(Type{Dim: quantity.RotationDim}, `duty.rotation`)
	add(Type{Dim: quantity.AreaDim}, `seat_area`)
	add(Type{Dim: quantity.HardnessHB}, `hub.hardness it.hardest`)
	add(Type{Dim: quantity.HardnessHRC}, `shaft.hardness`)
	add(Type{Kind: RangeKind, Dim: quantity.LengthDim}, `left_to_bore turn_off`)
	add(Type{Kind: RangeKind}, `press_friction rub_friction`)
	add(fact, `hub.comes_off shaft.case_hardened joint.outer_material.brittle it.turns it.bores it.bush it.braze way.cold`)
	add(Type{Kind: Row, Table: "materials"}, `shaft.material hub.material bush_material shaft_face bore_face joint.outer_material`)
	add(Type{Kind: Row, Table: "fillers"}, `filler it`)
	add(Type{Kind: Word, Words: shockWords}, `duty.shock`)
	add(Type{Kind: Word, Words: purposeWords}, `it.purpose option.purpose`)
	add(Type{Kind: Word, Words: speedWords}, `it.speed`)
	add(Type{Kind: Word, Words: &Words{Name: "speed", List: []string{"slow", "fast"}}}, `duty.speed_band`)
	s.funcs["pair"] = &Func{
		Kernel: kernel.Kernel{Name: "pair", Args: []kernel.Arg{{Range: interval.Of(0, 9)}, {Range: interval.Of(0, 9)}}, Value: func(x []float64) float64 {
			if x[0] == x[1] {
				return 2
			}
			return 0
		}},
		Args:   []FuncArg{{Type: Type{Kind: Row, Table: "materials"}, Column: "family"}, {Type: Type{Kind: Row, Table: "materials"}, Column: "family"}},
		Result: Type{Kind: Word, Words: pairWords},
	}
	s.funcs["wets"] = &Func{
		Kernel: kernel.Kernel{Name: "wets", Args: []kernel.Arg{{Range: interval.Of(0, 9)}, {Range: interval.Of(0, 9)}}, Value: func(x []float64) float64 { return 1 }},
		Args:   []FuncArg{{Type: Type{Kind: Row, Table: "fillers"}, Column: "family"}, {Type: Type{Kind: Row, Table: "materials"}, Column: "family"}},
		Result: fact,
	}
	s.funcs["rub_speed"] = &Func{
		Kernel: kernel.Kernel{Name: "rub_speed", Args: []kernel.Arg{{Name: "size", Range: interval.Of(0, 1)}, {Name: "rotation", Range: interval.Of(0, 1000)}},
			Value: func(x []float64) float64 { return math.Pi * x[0] * x[1] }},
		Args:   []FuncArg{{Type: length}, {Type: Type{Dim: quantity.RotationDim}}},
		Result: Type{Dim: quantity.SpeedDim},
	}
	s.funcs["shock_factor"] = &Func{
		Kernel: kernel.Kernel{Name: "shock_factor", Args: []kernel.Arg{{Name: "shock", Range: interval.Of(0, 2)}}, Value: func(x []float64) float64 { return 1 + x[0] }},
		Args:   []FuncArg{{Type: Type{Kind: Word, Words: shockWords}}},
		Result: number,
	}
	return s
}

// here is where the tests' expressions begin: line 7, column 20.
var here = fault.Place{File: "hub/bush.yaml", Line: 7, Column: 20}

func text(source string) Text { return Text{Source: source, At: here, Key: "define.wall.is"} }

// inferred parses and infers, and fails on any fault.
func inferred(t *testing.T, source string) *Expr {
	t.Helper()
	s, faults := Parse(text(source))
	e, more := s.Infer(bench())
	if all := append(faults, more...); len(all) > 0 {
		t.Fatalf("%s\n%v", source, all)
	}
	return e
}

// told is every fault of an expression, in reading order.
func told(source string) fault.List {
	s, faults := Parse(text(source))
	_, more := s.Infer(bench())
	faults = append(faults, more...)
	faults.Sort()
	return faults
}
