package kernel

import (
	"errors"
	"math"
	"strings"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/quantity"
)

var side = []Arg{{Name: "side", Says: "side of the square", Dim: quantity.LengthDim, Range: interval.Of(1, 3)}}

func TestWithinAnswersInItsRangesOnly(t *testing.T) {
	area := Within(side, func(x []float64) float64 { return x[0] * x[0] })
	for _, c := range []struct {
		x    []float64
		want float64
	}{
		{[]float64{1}, 1},
		{[]float64{3}, 9},
		{[]float64{0.999}, math.NaN()},
		{[]float64{3.001}, math.NaN()},
		{[]float64{math.NaN()}, math.NaN()},
		{nil, math.NaN()},
		{[]float64{2, 2}, math.NaN()},
	} {
		if got := area(c.x); got != c.want && !(math.IsNaN(got) && math.IsNaN(c.want)) {
			t.Errorf("area(%v) = %v, want %v", c.x, got, c.want)
		}
	}
}

func TestWorkShowsFormulaNumbersAndResult(t *testing.T) {
	sheet, err := Work("A = side²", side, []float64{2}, 4, quantity.AreaDim, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	const want = "A = side²; with side = 2 m; gives 4 m²"
	if got := strings.Join(sheet.Steps, "; "); got != want || sheet.Result != 4 {
		t.Errorf("got %q and %v, want %q and 4", got, sheet.Result, want)
	}
}

func TestWorkPassesARefusalOn(t *testing.T) {
	_, err := Work("A = side²", side, []float64{-2}, 0, quantity.AreaDim, nil, &basis.Refusal{Name: "side"})
	var refusal *basis.Refusal
	if !errors.As(err, &refusal) || refusal.Name != "side" {
		t.Errorf("err = %v, want the refusal of the side", err)
	}
}
