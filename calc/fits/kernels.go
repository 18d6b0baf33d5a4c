package fits

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// Kernels offers the classes of ISO 286 by number, so that rules can call them.
//
// A letter is its place in the alphabet: h is 8, k 11, p 16; 10 is js. Letter and
// grade are whole numbers; others are taken to the nearest. All of them jump with
// the size and most fall as often as they rise, so none has a trend over it: the
// enclosure looks at every step a range reaches into.
func Kernels() []kernel.Kernel {
	return []kernel.Kernel{
		itWidth(),
		heldGrade(),
		deviationOf("shaft_upper", "upper deviation of a shaft class", false, func(c cell) float64 { return c.upper }, func(l Limits) q.Length { return l.Upper }),
		deviationOf("shaft_lower", "lower deviation of a shaft class", false, func(c cell) float64 { return c.lower }, func(l Limits) q.Length { return l.Lower }),
		deviationOf("hole_upper", "upper deviation of a hole class", true, func(c cell) float64 { return c.upper }, func(l Limits) q.Length { return l.Upper }),
		deviationOf("hole_lower", "lower deviation of a hole class", true, func(c cell) float64 { return c.lower }, func(l Limits) q.Length { return l.Lower }),
	}
}

func sizeArg(trend int8) kernel.Arg {
	return kernel.Arg{Name: "size", Says: "nominal size", Dim: q.LengthDim, Range: interval.Of(1e-3, 0.5), Trend: trend}
}

func gradeArg(trend int8) kernel.Arg {
	return kernel.Arg{Name: "grade", Says: "7 for IT7; to the nearest whole one", Dim: q.Number, Range: interval.Of(firstGrade, lastGrade), Trend: trend}
}

// itWidth is the one that only rises: with the size and with the grade.
func itWidth() kernel.Kernel {
	k := kernel.Make(kernel.Kernel{
		Name: "it_width", Says: "width of a tolerance grade of ISO 286", Result: q.LengthDim,
		Args: []kernel.Arg{sizeArg(1), gradeArg(1)}, Source: source, Grade: basis.Secondary,
	}, "the row of the table that holds the size",
		func(x []float64) float64 {
			g := grids()
			return g.widths[g.step(millimetres(x[0]))*grades+whole(x[1])-firstGrade]
		},
		func(x []float64) (float64, []basis.Note, error) {
			l, _, err := Of(q.Length(x[0]), Class{"h", whole(x[1])}) // of any class of that grade
			return -float64(l.Lower), nil, err
		})
	return k
}

// heldGrade falls with the size, as every grade widens, and rises with the width.
func heldGrade() kernel.Kernel {
	return kernel.Make(kernel.Kernel{
		Name: "held_grade", Says: "finest tolerance grade of ISO 286 a machine of this width holds", Result: q.Number,
		Args: []kernel.Arg{sizeArg(-1),
			{Name: "width", Says: "all of a machine's scatter, smallest to largest", Dim: q.LengthDim, Range: interval.Of(1e-7, 1e-3), Trend: 1}},
		Source: source, Grade: basis.Secondary,
	}, "the finest grade whose width is no less",
		func(x []float64) float64 {
			g := grids()
			at := g.step(millimetres(x[0])) * grades
			for n, it := range g.widths[at : at+grades] {
				if x[1] <= it*(1+sameWidth) {
					return float64(firstGrade + n)
				}
			}
			return math.NaN()
		},
		func(x []float64) (float64, []basis.Note, error) {
			n, notes, err := HeldGrade(q.Length(x[0]), q.Length(x[1]))
			return float64(n), notes, err
		})
}

func deviationOf(name, says string, hole bool, edge func(cell) float64, limit func(Limits) q.Length) kernel.Kernel {
	cells := func() (*grid, []cell) {
		g := grids()
		if hole {
			return g, g.holes
		}
		return g, g.shafts
	}
	k := kernel.Make(kernel.Kernel{
		Name: name, Says: says + " of ISO 286", Result: q.LengthDim,
		Args: []kernel.Arg{
			sizeArg(0),
			{Name: "letter", Says: "its place in the alphabet: h 8, js 10, k 11; to the nearest whole one", Dim: q.Number, Range: interval.Of(firstLetter, lastLetter)},
			gradeArg(0),
		}, Source: source, Grade: basis.Memory, // some rows are from memory; Worked notes which
	}, "the row of the table that holds the size",
		func(x []float64) float64 {
			g, of := cells()
			return edge(g.class(of, g.step(millimetres(x[0])), whole(x[1]), whole(x[2])))
		},
		func(x []float64) (float64, []basis.Note, error) {
			l, notes, err := Of(q.Length(x[0]), Class{letterOf(whole(x[1]), hole), whole(x[2])})
			return float64(limit(l)), notes, err
		})
	k.Enclose = func(x []interval.I) interval.I {
		g, of := cells()
		return g.enclose(of, edge, x[0].Meet(k.Args[0].Range), x[1].Meet(k.Args[1].Range), x[2].Meet(k.Args[2].Range))
	}
	return k
}

// enclose is exact: it joins every class and step the ranges reach into; it has no
// end where one of them is no class. They lie within those of the kernel or are empty.
func (g *grid) enclose(of []cell, edge func(cell) float64, size, letter, grade interval.I) interval.I {
	out := interval.None()
	if size.Empty() || letter.Empty() || grade.Empty() {
		return out
	}
	for step := g.step(millimetres(size.Lo)); step <= g.step(millimetres(size.Hi)); step++ {
		for l := whole(letter.Lo); l <= whole(letter.Hi); l++ {
			for n := whole(grade.Lo); n <= whole(grade.Hi); n++ {
				v := edge(g.class(of, step, l, n))
				if math.IsNaN(v) { // no such class: nothing is sure, a range without end says so
					return interval.Whole()
				}
				out = out.Join(interval.Point(v))
			}
		}
	}
	return out
}

func whole(x float64) int { return int(math.Round(x)) }

// millimetres is sizeMM of a bare number.
func millimetres(x float64) float64 { return sizeMM(q.Length(x)) }
