package advisor

import (
	"fmt"
	"os"
	"testing"

	"wornfit/advisor/casefile"
	"wornfit/knowledge"
)

func TestDump(t *testing.T) {
	if os.Getenv("CASE")+os.Getenv("FILE") == "" {
		return
	}
	base, _ := knowledge.Load()
	data, _ := os.ReadFile(casePath())
	c, faults := casefile.Read("x", data, base.Vocabulary, casefile.IDs{"materials": base.IDs("materials")})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	s := c.Speech()
	a, err := Advise(base, c, c.Fits[0], Ask{Speech: s})
	if err != nil {
		t.Fatal(err)
	}
	for _, sec := range a.Condition {
		fmt.Println("#", sec.Name)
		for _, l := range sec.Lines {
			fmt.Printf("   %-40s %s ± %s\n", l.Says, s.Say(l.Value, l.Dim), s.Say(l.U, l.Dim))
		}
	}
	for _, n := range a.Notes {
		fmt.Println("note:", n)
	}
	for _, o := range a.Options {
		if opt := os.Getenv("OPT"); opt != "" && o.ID != opt || opt == "" && o.Rank > 1 {
			continue
		}
		fmt.Println(o.ID, o.Verdict, o.Points, o.Says)
		for _, v := range o.Values {
			fmt.Printf("   %-28s %-14s %s   = %s\n", v.Name, s.Say(v.Value, v.Dim), v.Says, v.Formula)
		}
		for _, r := range o.Reasons {
			h := "?"
			if r.Holds != nil {
				h = fmt.Sprint(*r.Holds)
			}
			fmt.Printf("   %-28s %-6s %-9s %-5s blocks %v weak %v: %s | %s | %s\n", r.Rule, r.Strength, r.Ground, h, r.Blocks, r.Weak, r.Text, r.Remedy, r.Source)
		}
		for _, st := range o.Steps {
			fmt.Printf("   step %-26s %.1f h wait %.0f h cost %.1f on %s: %s\n", st.ID, st.Hours/3600, st.Wait/3600, st.Costs, st.On, st.Says)
			for _, c := range st.Cautions {
				fmt.Println("        !", c)
			}
		}
		for _, n := range o.Neighbours {
			fmt.Println("   near", n)
		}
		for id, sc := range o.Scores {
			fmt.Printf("   %s %.4g %s -> %.0f %v\n", id, sc.Value, sc.Unit, sc.Points, sc.Parts)
		}
	}
	fmt.Println(a.Buying)
}

func casePath() string {
	if f := os.Getenv("FILE"); f != "" {
		return f
	}
	return "../testdata/cases/" + os.Getenv("CASE") + ".yaml"
}

func TestDims(t *testing.T) {
	if os.Getenv("CASE")+os.Getenv("FILE") == "" {
		return
	}
	base, _ := knowledge.Load()
	data, _ := os.ReadFile(casePath())
	c, faults := casefile.Read("x", data, base.Vocabulary, casefile.IDs{"materials": base.IDs("materials")})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	a, _ := Advise(base, c, c.Fits[0], Ask{Speech: c.Speech()})
	for _, o := range a.Options {
		fmt.Printf("%2d %-50s %-16s %.1f\n", o.Rank, o.ID, o.Verdict, o.Points)
		for _, d := range o.Dimensions {
			fmt.Printf("      %-14s %.4f..%.4f  target %.4f %.4f/%.4f made %v\n", d.Name, d.Low.Value*1e3, d.High.Value*1e3, d.Target*1e3, d.Lower*1e3, d.Upper*1e3, d.Made)
		}
	}
}
