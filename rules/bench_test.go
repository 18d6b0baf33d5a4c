package rules_test

import (
	"os"
	"testing"

	"wornfit/calc/catalogue"
	"wornfit/rules"
)

func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		if _, faults := rules.Load([]rules.Layer{{Name: "shipped", Files: os.DirFS("../knowledge")}}, catalogue.All()); len(faults) > 0 {
			b.Fatal(faults)
		}
	}
}
