package assembly

import (
	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// reached is a temperature past which a fitting is no longer ordinary.
type reached struct {
	past float64 // K
	note basis.Note
}

// The worst first: the first that is passed speaks. Common practice, no source.
var hot = []reached{
	{673.15, basis.Note{
		Says:   "hotter than a hub is warmed for fitting: iron and steel scale and lose strength; take a smaller gap, or cool the shaft as well",
		Source: "common practice, no source", Grade: basis.Practice,
	}},
	{473.15, basis.Note{
		Says:   "this draws the temper of hardened steel, and white metal, solder and seals in the hub do not stand it: see at what temperature this hub and what sits in it soften",
		Source: "common practice, no source", Grade: basis.Practice,
	}},
}

// From memory of any handbook, as dryIce and nitrogen are.
var cold = []reached{
	{nitrogen, basis.Note{Says: "colder than liquid nitrogen, -196 °C, makes it; heat the hub as well", Source: "any handbook, from memory", Grade: basis.Memory}},
	{dryIce, basis.Note{Says: "colder than dry ice, -78 °C, makes it: this takes liquid nitrogen, or heat in the hub as well", Source: "any handbook, from memory", Grade: basis.Memory}},
}

func tooHot(t q.Temperature) []basis.Note {
	for _, r := range hot {
		if float64(t) > r.past {
			return []basis.Note{r.note}
		}
	}
	return nil
}

func tooCold(t q.Temperature) []basis.Note {
	for _, r := range cold {
		if float64(t) < r.past {
			return []basis.Note{r.note}
		}
	}
	return nil
}
