package render

import (
	"strconv"
	"strings"

	"wornfit/advisor/answer"
	"wornfit/calc/quantity"
)

// cautionMark stands before what must be heeded before the act it warns of.
const cautionMark = "!"

// steps is the work in order. Cautions come before the act; one already told in
// full is named only.
func (p *Page) steps(o *answer.Option) {
	if len(o.Steps) == 0 {
		return
	}
	p.Head("How it is done")
	told := map[string]int{}
	wide := width(strconv.Itoa(len(o.Steps))) + 1
	for i, s := range o.Steps {
		for _, c := range s.Cautions {
			if first, again := told[c]; again && first == i+1 {
				continue
			} else if again {
				name, _, _ := strings.Cut(c, " (")
				p.Item(indent+wide+1, cautionMark, name+": as before step "+strconv.Itoa(first))
				continue
			}
			told[c] = i + 1
			p.Item(indent+wide+1, cautionMark, c)
		}
		p.Item(indent, pad(strconv.Itoa(i+1)+".", wide), sentence(s.Says)+takes(s))
	}
}

func takes(s answer.Step) string {
	var notes []string
	switch {
	case s.SentOut:
		notes = append(notes, "sent out: "+s.On)
	case s.On != "":
		notes = append(notes, "on the "+s.On)
	}
	if s.Hours > 0 {
		notes = append(notes, quantity.Span(s.Hours))
	}
	if s.Wait > 0 {
		if s.SentOut {
			notes = append(notes, "away "+quantity.Span(s.Wait))
		} else {
			notes = append(notes, "then "+quantity.Span(s.Wait)+" of waiting")
		}
	}
	if len(notes) == 0 {
		return ""
	}
	return " (" + strings.Join(notes, ", ") + ")"
}

// mistakes lists those of the treatments first, as they come; five, or all.
func (p *Page) mistakes(o *answer.Option, all bool) {
	list := o.Mistakes
	if len(list) == 0 {
		return
	}
	head := "Mistakes to avoid"
	if !all && len(list) > best {
		head += " (" + strconv.Itoa(len(list)-best) + " more with --all)"
		list = list[:best]
	}
	p.Head(head)
	for _, m := range list {
		text := sentence(m.Says)
		if m.Instead != "" {
			text += " Instead: " + strings.TrimSuffix(m.Instead, ".") + "."
		}
		p.Item(indent, "-", text)
	}
}

func (p *Page) neighbours(o *answer.Option) {
	if len(o.Neighbours) == 0 {
		return
	}
	p.Head("What stands next to the fit")
	for _, n := range o.Neighbours {
		p.Item(indent, "-", sentence(n))
	}
}

// missing asks for what would settle a verdict.
func (p *Page) missing(head string, list []answer.Missing) {
	if len(list) == 0 {
		return
	}
	p.Head(head)
	for _, m := range list {
		text := m.Name + ": " + m.Ask
		if m.With != "" {
			text += " (" + m.With + ")"
		}
		p.Item(indent, "-", text)
	}
}
