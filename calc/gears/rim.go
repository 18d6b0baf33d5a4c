package gears

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

const (
	thickRim = 1.2 // rim over tooth depth from which the rim does not matter: from memory of AGMA 2001-D04
	thinRim  = 0.5 // down to which the curve of that standard is drawn, from memory of it
)

// Rim returns how much metal is left below the teeth of a bored gear.
//
//	t = (root − bore)/2 − keyway
//
// The keyway is its depth in the hub: the thinnest place counts.
//
//   - Holds for: a gear without a web, solid from bore to teeth. With a bush in, the bore is the hole the bush sits in.
//   - Beyond: a gear with a web or spokes: measure the rim itself.
//   - Source: geometry.
func Rim(root, bore, keyway q.Length) (q.Length, error) {
	switch {
	case !(root > 0) || math.IsInf(float64(root), 1):
		return 0, refuse("root circle", mm(root), "more than 0")
	case !(bore >= 0 && bore < root):
		return 0, refuse("bore", mm(bore), "0 or more and less than the root circle, "+mm(root))
	case !(keyway >= 0 && keyway < (root-bore)/2):
		return 0, refuse("depth of the keyway", mm(keyway), "0 or more and less than the metal under the teeth, "+mm((root-bore)/2))
	}
	return q.Length(rimLeft(float64(root), float64(bore), float64(keyway))), nil
}

// RootCircle returns the diameter at the bottom of the spaces of a standard gear.
//
//	df = m·(z − 2.5)
//
// It is the most that may be taken as the outside of the gear as a ring.
//
//   - Holds for: full-depth teeth cut without shift, 1.25 modules deep below the pitch circle.
//   - Beyond: measure it; stub teeth are less deep, some inch teeth 1.157 modules only.
//   - Source: ISO 53, from memory.
func RootCircle(module q.Length, teeth int) (q.Length, error) {
	if err := above0("module", mm(module), float64(module)); err != nil {
		return 0, err
	}
	if teeth < fewest {
		return 0, refuse("number of teeth", fmt.Sprint(teeth), "6 or more")
	}
	return q.Length(rootCircle(float64(module), float64(teeth))), nil
}

// RimFactor returns by how much a thin rim raises the bending stress of a tooth.
//
//	KB = 1.6·ln(2.242/mB), mB = rim/depth, below mB of 1.2; else 1
//
// The rim is the metal below the root of the tooth, less a keyway; depth is the
// whole depth of the tooth, 2.25 modules by the standard.
//
//   - Holds for: outside teeth, mB of 0.5 and more.
//   - Beyond: a thinner rim is noted as extrapolated: it bends as a ring and may break through.
//   - Source: AGMA 2001-D04, from memory.
func RimFactor(rim, depth q.Length) (float64, []basis.Note, error) {
	if err := firstOf(above0("rim", mm(rim), float64(rim)), above0("depth of the teeth", mm(depth), float64(depth))); err != nil {
		return 0, nil, err
	}
	var notes []basis.Note
	switch mB := float64(rim / depth); {
	case mB < thinRim:
		notes = append(notes, basis.Note{
			Says:   "the rim is under half the depth of the teeth, thinner than the factor is stated for",
			Source: "AGMA 2001-D04, from memory", Grade: basis.Extrapolated,
		})
	case mB < thickRim:
		notes = append(notes, basis.Note{
			Says:   "the rim is under 1.2 times the depth of the teeth and raises the stress in them",
			Source: "AGMA 2001-D04, from memory", Grade: basis.Memory,
		})
	}
	return rimFactor(float64(rim), float64(depth)), notes, nil
}

func rimLeft(root, bore, keyway float64) float64 { return (root-bore)/2 - keyway }

func rootCircle(module, teeth float64) float64 {
	const twoDeep = 2.5 // twice 1.25 modules, from memory of ISO 53
	return module * (teeth - twoDeep)
}

func rimFactor(rim, depth float64) float64 {
	const rise, none = 1.6, 2.242 // AGMA 2001-D04, from memory
	if mB := rim / depth; mB < thickRim {
		return rise * math.Log(none/mB)
	}
	return 1
}
