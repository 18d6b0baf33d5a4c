package render

import "wornfit/advisor/answer"

// halted writes why nothing may be told, and nothing else.
func (p *Page) halted(a *answer.Answer) bool {
	if p.stopped(a) {
		return true
	}
	if a.Stop == nil {
		return false
	}
	p.top(a)
	p.unanswered(a.Stop)
	return true
}

// stopped writes the stop for safety: first what to do instead. No size of any
// kind is printed.
func (p *Page) stopped(a *answer.Answer) bool {
	if a.Stop == nil || a.Stop.Kind != "safety" {
		return false
	}
	for i, d := range a.Stop.Do {
		text := sentence(d)
		if i == 0 {
			text = "Do not repair this yourself: " + d + "."
		}
		p.Para(0, text)
	}
	p.Blank()
	p.Para(0, "Why: "+a.Stop.Because+". No option is advised and no size is given, leaving it as it is included.")
	p.Para(0, "Case: "+a.Case.Title+".")
	return true
}

var stopHeads = map[string]string{"question": "One answer is needed first", "readings": "The readings do not agree"}

func (p *Page) unanswered(s *answer.Stop) {
	p.Head(stopHeads[s.Kind])
	p.Para(indent, sentence(s.Because))
	for _, d := range s.Do {
		p.Item(indent, "-", sentence(d))
	}
}
