package bushes

import (
	"math"
	"slices"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// Kernels offers the nearest bought size of each kind to rules and formulas. A
// rule language without words for kinds needs a kernel for each.
func Kernels() []kernel.Kernel {
	var out []kernel.Kernel
	for _, k := range Kinds() {
		bore := func(b Bush) q.Length { return b.Bore }
		outside := func(b Bush) q.Length { return b.Outside }
		out = append(out, stepped(k, "bore", "bore that is wanted", bore, false), stepped(k, "bore", "bore that is wanted", bore, true),
			stepped(k, "outside", "bore of the housing", outside, false), stepped(k, "outside", "bore of the housing", outside, true))
	}
	return out
}

// stepped is the nearest size at or over, or at or under. It never falls as the
// size asked for grows, which is all an enclosure needs.
func stepped(k Kind, what, asked string, of func(Bush) q.Length, over bool) kernel.Kernel {
	list := Of(k)
	sizes := ladder(list, of)
	word := "under"
	if over {
		word = "over"
	}
	arg := kernel.Arg{Name: "size", Says: asked, Dim: q.LengthDim, Range: interval.Of(sizes[0], sizes[len(sizes)-1]), Trend: 1}
	return kernel.Make(kernel.Kernel{
		Name: string(k) + "_" + what + "_" + word, Says: "nearest " + what + " of a bought " + string(k) + " bush at or " + word + " a size", Result: q.LengthDim,
		Args: []kernel.Arg{arg}, Source: list[0].Source, Grade: worst(list),
	}, "the nearest "+what+" of the table at or "+word+" it",
		func(x []float64) float64 {
			below, above := between(sizes, x[0])
			if over {
				return above
			}
			return below
		},
		func(x []float64) (float64, []basis.Note, error) {
			below, above, notes, err := nearest(k, what, q.Length(x[0]), of)
			found := below
			if over {
				found = above
			}
			if err != nil {
				return 0, nil, err
			}
			if len(found) == 0 { // the table ends before it on this side
				return 0, nil, refuse(asked, mm(q.Length(x[0])), "from "+mm(q.Length(sizes[0]))+" to "+mm(q.Length(sizes[len(sizes)-1]))+", the sizes of the table")
			}
			return float64(of(found[0])), notes, nil
		})
}

// ladder is the sizes of a kind by rising size.
func ladder(list []Bush, of func(Bush) q.Length) []float64 {
	sizes := make([]float64, len(list))
	for i, b := range list {
		sizes[i] = float64(of(b))
	}
	slices.Sort(sizes)
	return slices.Compact(sizes)
}

// between is the size at or under and the one at or over; the caller keeps within the ladder.
func between(sizes []float64, x float64) (under, over float64) {
	under, over = math.NaN(), math.NaN()
	for _, s := range sizes {
		if s <= x+slip {
			under = s
		}
		if math.IsNaN(over) && s >= x-slip {
			over = s
		}
	}
	return under, over
}

func worst(list []Bush) basis.Grade {
	g := basis.Page
	for _, b := range list {
		g = basis.Worse(g, b.Grade)
	}
	return g
}
