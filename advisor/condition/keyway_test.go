package condition

import (
	"testing"

	"wornfit/advisor/casefile"
	"wornfit/calc/quantity"
)

// A keyway off the fit is another part's, and of two the less worn tells more.
func TestKeywayOfTheFitTellsTheKey(t *testing.T) {
	size := func(mm float64) casefile.Value {
		return casefile.Value{Known: true, Lo: mm / 1000, Hi: mm / 1000}
	}
	b := newBench().round()
	b.hub.Near = []casefile.Neighbour{{Kind: "keyway", Distance: size(60), Size: size(6)}, {Kind: "keyway", Distance: size(0), Size: size(8.3)}}
	b.shaft.Near = []casefile.Neighbour{{Kind: "keyway", Size: size(8)}, {Kind: "groove", Size: size(3)}}
	if got := b.find(t).Known()["fit.keyway_width"]; got.Best != 0.008 || !got.Is {
		t.Errorf("keyway is %+v, want 8 mm", got)
	}
	b.hub.Near, b.shaft.Near = nil, nil
	if got, there := b.find(t).Known()["fit.keyway_width"]; there {
		t.Errorf("no keyway is stated, and it is given as %+v", got)
	}
}

func TestInchMade(t *testing.T) {
	for text, want := range map[string]bool{"28 mm": false, "1.125 in": true, "31.75 mm": true, "25.4 mm": true, "12.7 mm": true,
		"38.1 mm": true, "25 mm": false, "50.5 mm": false, "2 in": true} {
		typed, err := quantity.Parse(text, quantity.LengthDim)
		if err != nil {
			t.Fatal(err)
		}
		if got := inchMade(casefile.Value{Known: true, Lo: typed.Low, Hi: typed.High, Typed: typed}); got != want {
			t.Errorf("%s: made in inches %v, want %v", text, got, want)
		}
	}
	if inchMade(casefile.Value{}) {
		t.Error("a size nobody states is called an inch size")
	}
}
