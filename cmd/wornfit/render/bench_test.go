package render

import (
	"testing"

	"wornfit/calc/quantity"
)

// A page is drawn once a run; it should cost a few milliseconds at most.
func BenchmarkAdvise(b *testing.B) {
	a, v := fixture(), Voice{quantity.Speech{Money: "EUR"}}
	for b.Loop() {
		Advise(Look{Width: 80}, a, v, true)
	}
}
