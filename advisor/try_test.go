package advisor

import (
	"fmt"
	"os"
	"testing"
	"time"

	"wornfit/advisor/casefile"
	"wornfit/knowledge"
)

func TestTry(t *testing.T) {
	base, faults := knowledge.Load()
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for _, name := range []string{"lever-eye", "gear-bore", "loose-hub", "people"} {
		data, _ := os.ReadFile("../testdata/cases/" + name + ".yaml")
		c, faults := casefile.Read(name, data, base.Vocabulary, casefile.IDs{"materials": base.IDs("materials")})
		if len(faults) > 0 {
			t.Error(faults)
			continue
		}
		start := time.Now()
		a, err := Advise(base, c, c.Fits[0], Ask{Speech: c.Speech()})
		if err != nil {
			t.Error(err)
			continue
		}
		fmt.Println("=====", name, time.Since(start), a.Stop)
		for _, m := range a.Methods {
			best := ""
			if m.Best != nil {
				best = *m.Best
			}
			fmt.Printf("%d %-22s %-16s %-18s %5.1f %s | %s\n", m.Rank, m.Name, m.Verdict, m.Kind, m.Points, best, m.Why)
		}
		for _, o := range a.Options {
			fmt.Printf("%2d %-50s %-16s %5.1f off %.0f", o.Rank, o.ID, o.Verdict, o.Points, o.Broken)
			for id, s := range o.Scores {
				fmt.Printf(" %s=%.3g(%.0f)", id, s.Value, s.Points)
			}
			fmt.Println()
			for _, d := range o.Dimensions {
				fmt.Printf("      %-14s %.4f..%.4f  target %.4f %.4f/%.4f by %v %v\n", d.Name, d.Low.Value*1e3, d.High.Value*1e3, d.Target*1e3, d.Lower*1e3, d.Upper*1e3, d.Low.By, d.High.By)
			}
			n := 0
			for _, r := range o.Reasons {
				if (r.Blocks || r.Holds == nil || !*r.Holds || len(r.Weak) > 0) && n < 6 {
					n++
					fmt.Printf("      %s %s %v: %s {%s}\n", r.Rule, r.Strength, r.Blocks, r.Text, r.Source)
				}
			}
			for _, m := range o.Missing {
				fmt.Println("      missing", m.Name)
			}
		}
		if a.Buying != nil {
			fmt.Println(a.Buying.Text)
		}
	}
}
