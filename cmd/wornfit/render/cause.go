package render

import "wornfit/advisor/answer"

// mostLooks is how many questions are put when no pattern of wear fits.
const mostLooks = 4

// cause tells why it wore, and what to cure first; when nothing surely fits,
// where to look.
func (p *Page) cause(a *answer.Answer) {
	if len(a.Diagnosis) == 0 {
		p.look(a.Look)
		return
	}
	p.Head("Why it wore: cure this first")
	for i, f := range a.Diagnosis {
		if i > 0 {
			p.Blank()
		}
		p.Item(indent, "-", sentence(f.Says)+source(f.Source, ""))
		names, texts := []string{"cause", "cure first", "repair"}, []string{f.Cause, f.Cure, f.Repair}
		if f.Again != "" {
			names, texts = append(names, "or else"), append(texts, f.Again)
		}
		p.Pairs(2*indent, names, texts)
	}
}

func (p *Page) look(list []answer.Missing) {
	if len(list) == 0 {
		return
	}
	p.Head("Why it wore is not plain")
	p.Para(indent, "To tell why it wore, look:")
	for _, m := range list[:min(len(list), mostLooks)] {
		text := m.Ask
		if m.With != "" {
			text += " [" + m.With + "]"
		}
		p.Item(indent, "-", text)
	}
}
