// Package catalogue is the one list of every calculation at hand: what rules
// may call, what `formula list` shows, what the tests of the language try.
//
// Start with All or Find. A topic package joins by offering Kernels and getting
// a line in topics. The package knows no formula itself.
package catalogue

import (
	"cmp"
	"slices"
	"strings"
	"sync"

	"wornfit/calc/assembly"
	"wornfit/calc/bearing"
	"wornfit/calc/buildup"
	"wornfit/calc/bushes"
	"wornfit/calc/cleanup"
	"wornfit/calc/film"
	"wornfit/calc/fits"
	"wornfit/calc/gears"
	"wornfit/calc/interference"
	"wornfit/calc/joints"
	"wornfit/calc/kernel"
	"wornfit/calc/keyed"
	"wornfit/calc/machining"
	"wornfit/calc/rolling"
	"wornfit/calc/rotating"
	"wornfit/calc/strength"
	"wornfit/calc/uncertainty"
	"wornfit/calc/wear"
)

// Topic is the calculations of one package, under the package's name.
type Topic struct {
	Name    string
	Kernels []kernel.Kernel
}

// topics is built once: a kernel holds functions, not numbers that change.
var topics = sync.OnceValue(func() []Topic {
	return []Topic{
		{"interference", interference.Kernels()},
		{"assembly", assembly.Kernels()},
		{"fits", fits.Kernels()},
		{"strength", strength.Kernels()},
		{"keyed", keyed.Kernels()},
		{"gears", gears.Kernels()},
		{"joints", joints.Kernels()},
		{"bearing", bearing.Kernels()},
		{"film", film.Kernels()},
		{"rolling", rolling.Kernels()},
		{"bushes", bushes.Kernels()},
		{"wear", wear.Kernels()},
		{"cleanup", cleanup.Kernels()},
		{"buildup", buildup.Kernels()},
		{"machining", machining.Kernels()},
		{"rotating", rotating.Kernels()},
		{"uncertainty", uncertainty.Kernels()},
	}
})

// Topics returns the calculations by subject, in the order a fitter meets them.
func Topics() []Topic { return slices.Clone(topics()) }

var all = sync.OnceValue(func() []kernel.Kernel {
	var out []kernel.Kernel
	for _, t := range topics() {
		out = append(out, t.Kernels...)
	}
	slices.SortFunc(out, func(a, b kernel.Kernel) int { return cmp.Compare(a.Name, b.Name) })
	return out
})

// All returns every calculation, sorted by name.
func All() []kernel.Kernel { return slices.Clone(all()) }

// Find returns the calculation of a name.
func Find(name string) (kernel.Kernel, bool) {
	list := all()
	i, ok := slices.BinarySearchFunc(list, name, func(k kernel.Kernel, name string) int { return cmp.Compare(k.Name, name) })
	if !ok {
		return kernel.Kernel{}, false
	}
	return list[i], true
}

// Family returns the calculations that are ends of one answer, such as the least
// and the most: their names are the stem and one word more, and they take the same
// arguments. None: the stem is no family's, or a calculation's own name.
func Family(stem string) []kernel.Kernel {
	if _, is := Find(stem); is {
		return nil
	}
	var out []kernel.Kernel
	for _, k := range all() {
		word, ok := strings.CutPrefix(k.Name, stem+"_")
		if !ok || word == "" || strings.Contains(word, "_") {
			continue
		}
		if len(out) > 0 && !slices.EqualFunc(out[0].Args, k.Args, func(a, b kernel.Arg) bool { return a.Name == b.Name && a.Dim == b.Dim }) {
			return nil
		}
		out = append(out, k)
	}
	if len(out) < 2 {
		return nil
	}
	return out
}
