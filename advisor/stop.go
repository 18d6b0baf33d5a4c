package advisor

import (
	"fmt"

	"wornfit/advisor/answer"
	"wornfit/advisor/casefile"
	"wornfit/advisor/condition"
	"wornfit/calc/quantity"
	"wornfit/rules"
	"wornfit/rules/fault"
	"wornfit/rules/link"
)

// instead is what to do where no home work may be advised.
var instead = []string{
	"tag it out of service so that nobody uses it",
	"have it repaired by a person licensed for it, or fit a bought, certified part to its maker's limits",
	"follow the local code: it may bar repair altogether",
}

// barred says why no option may be ranked, before anything is worked out.
func barred(c *casefile.Case) *answer.Stop {
	if because, yes := c.Barred(); yes {
		return &answer.Stop{Kind: "safety", Because: because, Do: instead}
	}
	if c.Harm == casefile.NotSaid {
		return &answer.Stop{Kind: "question", Because: casefile.HarmQuestion, Do: []string{"answer it in the case file; until then no option is ranked"}}
	}
	return nil
}

// dangerous looks at what only the condition shows: energy stored in the part
// that turns, and readings that contradict each other.
func dangerous(base *rules.Base, cond *condition.Condition, contradictions fault.List, s quantity.Speech) *answer.Stop {
	if e := cond.Energy; e.Is && e.Range.Hi > base.MostEnergy {
		return &answer.Stop{Kind: "safety", Do: instead,
			Because: fmt.Sprintf("the turning part may hold up to %.0f J; above %.0f J a part that comes loose can kill", e.Range.Hi, base.MostEnergy)}
	}
	if len(contradictions) == 0 {
		return nil
	}
	stop := &answer.Stop{Kind: "readings", Because: "readings contradict each other"}
	for _, f := range contradictions {
		stop.Do = append(stop.Do, f.Error())
	}
	return stop
}

// notYet is for a purpose the rule base has no file for.
func notYet(base *rules.Base, purpose string) *answer.Stop {
	var have string
	for _, p := range base.Input.Parts {
		if p.Side == link.Purpose {
			have += " " + p.ID
		}
	}
	return &answer.Stop{Kind: "question", Because: "the rule base has no purpose " + purpose, Do: []string{"it knows:" + have}}
}
