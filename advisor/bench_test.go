package advisor_test

import (
	"testing"

	"wornfit/advisor"
)

// Advise on each shipped case, the rule base loaded once. The command's own
// figure is this, once and cold, with the loading of the rules before it:
//
//	go test -run - -bench Advise -benchmem ./advisor
func BenchmarkAdvise(b *testing.B) {
	rules := base(b)
	for _, name := range []string{"lever-eye", "gear-bore", "loose-hub", "guide-rod", "keyed-sprocket", "old-implement", "roaster-drum"} {
		c := read(b, rules, shipped(b, name))
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := advisor.Advise(rules, c, c.Fits[0], advisor.Ask{Speech: c.Speech()}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
