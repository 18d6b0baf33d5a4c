package advisor

import (
	"fmt"
	"os"
	"testing"

	"wornfit/advisor/casefile"
	"wornfit/advisor/condition"
	"wornfit/advisor/given"
	"wornfit/advisor/judge"
	"wornfit/knowledge"
	"wornfit/rules/link"
)

func TestDbg(t *testing.T) {
	if os.Getenv("CASE")+os.Getenv("FILE") == "" {
		return
	}
	base, _ := knowledge.Load()
	data, _ := os.ReadFile(casePath())
	c, _ := casefile.Read("x", data, base.Vocabulary, casefile.IDs{"materials": base.IDs("materials")})
	f := c.Fits[0]
	cond, _ := condition.Find(c, f, expansion(base))
	b := &judge.Bench{Base: base, Given: given.New(base, cond), Speech: c.Speech(), Weights: weights(base, c), Near: near(cond)}
	for _, cb := range link.All(base.Input, base.Purpose(f.Purpose)) {
		if cb.ID != os.Getenv("OPT") {
			continue
		}
		j, _ := b.Judge(cb)
		for _, a := range j.Option.Aims {
			fmt.Println("aim", a.Of.ID, a.Least, a.Most, a.Middle)
		}
		show := func() {
			fmt.Println(j.Verdict, j.Kind, j.Found.Works, j.Found.Narrowed, j.Found.Missing, j.Set.Rows)
			for _, d := range j.Option.Dims {
				fmt.Printf("  %s %.4f\n", d.ID, j.Found.Reg[d.Target]*1e3)
			}
			for i, s := range j.Found.States {
				fmt.Printf("    %-28s %v applies %v worst %.4g at %.4g proved %v %v weak %v\n", j.Option.Checks[i].FullID, s.Holds, s.Applies, s.Worst, s.AtTarget, s.Proved, s.Of, s.Weak)
			}
			for _, i := range j.Found.Broken {
				fmt.Println("   broken", j.Option.Checks[i].FullID)
			}
		}
		show()
		b.Finish(j)
		show()
		for _, w := range j.Found.Windows {
			fmt.Printf("%+v\n", w)
		}
	}
}
