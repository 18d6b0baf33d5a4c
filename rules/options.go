package rules

import (
	"wornfit/rules/fault"
	"wornfit/rules/yamldoc"
)

// options reads the trade names, in the order in which they are tried. A later
// layer's come after the first's.
func (l *loader) options(doc *yamldoc.Doc) {
	for _, n := range doc.Root.Items() {
		if !n.Keys("id", "says", "shaft", "hub", "any", "fit", "cannot") {
			continue
		}
		t := TradeName{ID: word(n.Need("id", "give it an id")), Says: n.Need("says", "say it in a line").Text(), Cannot: map[string]string{}, At: n.At(),
			Shaft: texts(n.Get("shaft")), Hub: texts(n.Get("hub")), Any: texts(n.Get("any")), Fit: texts(n.Get("fit"))}
		if len(t.Shaft)+len(t.Hub)+len(t.Any)+len(t.Fit) == 0 {
			n.Fault("the trade name "+t.ID+" fits every option", "say what is done: shaft: [...], hub: [...], any: [...] or fit: [...]")
			continue
		}
		for i := range l.base.Names {
			if had := &l.base.Names[i]; had.ID == t.ID {
				l.faults = append(l.faults, fault.Fault{At: n.Get("id").At(), Key: n.Get("id").Key, Says: "the trade name " + t.ID + " stands at " + had.At.String() + " already",
					Remedy: "choose another id", Also: []fault.Place{had.At}})
			}
		}
		for _, e := range n.Get("cannot").Entries() {
			if t.Cannot[e.Name] = e.Value.Text(); t.Cannot[e.Name] == "" {
				l.faults.Add(e.KeyAt, e.Value.Key, "no sentence says why "+t.ID+" cannot serve "+e.Name, "say why in shop words")
			}
		}
		l.base.Names = append(l.base.Names, t)
	}
}
