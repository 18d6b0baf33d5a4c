package rules

import (
	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// seam reads what may cross between part files: names with a kind of quantity,
// or the table whose row it is.
func (l *loader) seam(d *yamldoc.Doc) {
	s := &l.base.Input.Seam
	if !d.Root.Keys("shaft", "hub", "hold", "purpose", "joint") {
		return
	}
	at := map[string]fault.Place{}
	for _, list := range []struct {
		key string
		to  *[]link.SeamName
	}{{"shaft", &s.Shaft}, {"hub", &s.Hub}, {"hold", &s.Hold}, {"purpose", &s.Purpose}, {"joint", &s.Joint}} {
		for _, e := range d.Root.Need(list.key, "list what crosses").Entries() {
			if why := lang.BadName(e.Name); why != "" && list.key != "joint" { // a joint's names stand after a dot
				l.faults.Add(e.KeyAt, e.Value.Key, why, "")
				continue
			}
			if had, again := at[e.Name]; again && list.key != "joint" && list.key != "hold" {
				l.faults.Add(e.KeyAt, e.Value.Key, e.Name+" crosses already, at "+had.String(), "choose another name")
			}
			at[e.Name] = e.KeyAt
			if t, ok := l.seamType(e.Value); ok {
				*list.to = append(*list.to, link.SeamName{Name: e.Name, Type: t, At: e.KeyAt})
			}
		}
	}
}

func (l *loader) seamType(n yamldoc.Node) (lang.Type, bool) {
	kind := n.Text()
	if dim, ok := quantity.Kinds[kind]; ok {
		return number(dim), true
	}
	if _, ok := l.base.Vocabulary.Tables[kind]; ok {
		return lang.Type{Kind: lang.Row, Table: kind}, true
	}
	known := kindWords()
	for t := range l.base.Vocabulary.Tables {
		known = append(known, t)
	}
	n.Fault("there is no kind of quantity and no table "+kind, fault.DidYouMean(kind, sorted(known)))
	return lang.Type{}, false
}
