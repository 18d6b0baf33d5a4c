package render

import (
	"slices"
	"strings"

	"wornfit/advisor/answer"
)

// picks lists what an option is worked out for: the axis each part is set up
// on, the metal of the bush, the machines.
func (p *Page) picks(o *answer.Option) {
	if len(o.Picks) == 0 {
		return
	}
	p.Blank()
	p.Para(indent, "It is worked out for:")
	var names, texts []string
	for _, name := range pickNames([]*answer.Option{o}) {
		names, texts = append(names, name), append(texts, picked(o, name))
	}
	p.Pairs(2*indent, names, texts)
}

// pickNames are the picks of options in words, each once, in a fixed order.
func pickNames(list []*answer.Option) []string {
	var names []string
	for _, o := range list {
		for k := range o.Picks {
			names = append(names, pickName(k))
		}
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// picked is what an option picked under that name.
func picked(o *answer.Option, name string) string {
	var rows []string
	for k, row := range o.Picks {
		if pickName(k) == name {
			rows = append(rows, row)
		}
	}
	slices.Sort(rows)
	return strings.Join(slices.Compact(rows), ", ")
}

// pickName says a pick in words: hub/bush.bush_material is `hub, bush material`.
func pickName(key string) string {
	side, _, _ := strings.Cut(key, ".")
	side, _, _ = strings.Cut(side, "/")
	return side + ", " + strings.ReplaceAll(key[strings.LastIndexByte(key, '.')+1:], "_", " ")
}
