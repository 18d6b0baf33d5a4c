package advisor

import (
	"fmt"
	"os"
	"sort"
	"testing"
	"time"

	"wornfit/advisor/casefile"
	"wornfit/advisor/condition"
	"wornfit/advisor/given"
	"wornfit/advisor/judge"
	"wornfit/calc/quantity"
	"wornfit/knowledge"
	"wornfit/rules/link"
)

func TestZZTime(t *testing.T) {
	base, _ := knowledge.Load()
	for _, name := range []string{"lever-eye", "gear-bore", "loose-hub"} {
		file := "../testdata/cases/" + name + ".yaml"
		data, _ := os.ReadFile(file)
		c, faults := casefile.Read(file, data, base.Vocabulary, casefile.IDs{"materials": base.IDs("materials"), "machines": base.IDs("machines")})
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		f := c.Fits[0]
		cond, _ := condition.Find(c, f, expansion(base))
		shop := &judge.Bench{Base: base, Given: given.New(base, cond), Speech: quantity.Speech{}, Weights: weights(base, c), Called: map[string]string{}, Near: near(cond), Made: made(c, f)}
		type row struct {
			id string
			d  time.Duration
			v  string
		}
		var rows []row
		var sum time.Duration
		for _, cb := range link.All(base.Input, base.Purpose(f.Purpose)) {
			s := time.Now()
			j, err := shop.Judge(cb)
			if err != nil {
				t.Fatal(err)
			}
			d := time.Since(s)
			sum += d
			rows = append(rows, row{cb.ID, d, j.Verdict})
		}
		sort.Slice(rows, func(i, j int) bool { return rows[i].d > rows[j].d })
		fmt.Println("==", name, len(rows), "options", sum)
		for i := 0; i < 14 && i < len(rows); i++ {
			fmt.Println("  ", rows[i].d, rows[i].id, rows[i].v)
		}
	}
}
