package assembly

import (
	"strings"

	"wornfit/calc/basis"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// coldKernels are the mean expansions in the cold, one for each metal: a kernel
// takes no words.
func coldKernels() []kernel.Kernel {
	var out []kernel.Kernel
	for _, metal := range ColdMetals() {
		value, source, grade := fits[metal].mean, "NIST cryogenic material property correlations", basis.Secondary
		if s, ok := shrunk[metal]; ok {
			value, source, grade = func(t float64) float64 { return between(s[0][0], s[1][0], t) }, "tables of low-temperature properties, from memory", basis.Memory
		}
		out = append(out, kernel.Make(kernel.Kernel{
			Name: "cold_expansion_" + strings.ReplaceAll(metal, " ", "_"), Says: "mean expansion of " + metal + " from 20 °C down to a deep cold", Result: q.ExpansionDim,
			Args: []kernel.Arg{kernel.Takes("cold", "temperature", q.TemperatureDim, coldest, nearRoom, 1)}, Source: source, Grade: grade,
		}, "α = (size lost, as a part)/(20 °C − T)",
			func(x []float64) float64 { return value(x[0]) },
			func(x []float64) (float64, []basis.Note, error) {
				c, notes, err := MeanContraction(metal, q.Temperature(x[0]))
				return float64(c.Mean), notes, err
			}))
	}
	return out
}
