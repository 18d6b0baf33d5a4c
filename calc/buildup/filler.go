package buildup

import (
	"fmt"
	"math"

	q "wornfit/calc/quantity"
)

// Filler returns the mass of rod, wire or powder that leaves a volume of metal
// in place, when only part of what is fed stays there.
//
//	m = ρ·V/efficiency
//
// All in SI units.
//
//   - Holds for: an efficiency counted over all that is bought, stub ends and overspray too.
//   - Beyond: a coated rod weighs more by its flux; buy by the core.
//   - Source: arithmetic; the form P = W·L/E of welders' handbooks.
func Filler(metal q.Volume, density q.Density, efficiency float64) (q.Mass, error) {
	switch {
	case !(metal >= 0):
		return 0, refuse("volume of metal", fmt.Sprintf("%.6g cm³", 1e6*float64(metal)), "0 or more")
	case !(density > 0):
		return 0, refuse("density", fmt.Sprintf("%.6g kg/m³", float64(density)), "more than 0")
	case !(efficiency > 0 && efficiency <= 1):
		return 0, refuse("deposit efficiency", fmt.Sprintf("%.4g", efficiency), "more than 0 and at most 1, such as 0.65")
	}
	return q.Mass(filler(float64(metal), float64(density), efficiency)), nil
}

// Layers returns how many layers of a thickness make a coat, both per side.
//
//	N = coat/layer, rounded up
//
// Limits and source:
//
//   - Holds for: layers of one thickness; nothing to lay is no layer.
//   - Beyond: more than 1000 layers are refused.
//   - Source: arithmetic.
func Layers(coat, layer q.Length) (int, error) {
	if !(coat >= 0) || math.IsInf(float64(coat), 0) {
		return 0, refuse("coat per side", mm(coat), "0 or more")
	}
	if !(layer > 0) {
		return 0, refuse("thickness of a layer", mm(layer), "more than 0")
	}
	n := layers(float64(coat), float64(layer))
	if !(n <= most) {
		return 0, refuse("thickness of a layer", mm(layer), "thick enough for 1000 layers, "+mm(coat/most)+" or more")
	}
	return int(n), nil
}

// most is our choice of where a count of layers is surely a slip of units.
const most = 1000

func filler(metal, density, efficiency float64) float64 { return density * metal / efficiency }

// layers forgives a billionth of a layer, so that 0.6 in layers of 0.2 stays three.
func layers(coat, layer float64) float64 { return math.Ceil(coat/layer - 1e-9) }
