package rules

import (
	"slices"

	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// choose reads the sizes, in cutting order.
func (l *loader) choose(sc *scope) {
	entries := sc.d.doc.Root.Get("choose").Entries()
	for i, e := range entries {
		if e.Value.Keys("says", "part", "by", "gauged", "range", "suits") && sc.d.dims[e.Name] {
			l.dimension(sc, e, entries[:i])
		}
	}
}

func (l *loader) dimension(sc *scope, e yamldoc.Entry, earlier []yamldoc.Entry) {
	n := e.Value
	d := link.Dimension{ID: e.Name, At: e.KeyAt, Says: n.Need("says", "write what a fitter calls it").Text(), Suits: suits(n.Get("suits")),
		Part: n.Need("part", "write whose size it is").Word(sc.d.metals()...),
		By:   n.Need("by", "name the pick that makes it").Text()}
	d.Inside = n.Need("gauged", "write inside or outside").Word("inside", "outside") == "inside"
	l.made(sc, n.Get("by"), d.By)
	l.suitsEarlier(sc, n.Get("suits"), &d, earlier)
	d.Low, d.High = sc.between(n.Need("range", "write LOW .. HIGH"), quantity.LengthDim)
	if d.Low != nil && d.High != nil {
		sc.d.part.Choose = append(sc.d.part.Choose, d)
	}
}

// metals are the parts whose sizes a file may choose: its side and its joints.
func (d *draft) metals() []string {
	out := []string{"shaft", "hub"}
	for j := range d.joints {
		out = append(out, j)
	}
	return sorted(out)
}

// suits is what a size is cut to; it may stand in a list of one.
func suits(n yamldoc.Node) string {
	if items := n.Items(); len(items) == 1 {
		return items[0].Text()
	} else if len(items) > 1 {
		n.Fault("a size suits one other", "name the one it is cut to")
	}
	return ""
}

// suitsEarlier tells a size that is cut to suit one not made before it.
func (l *loader) suitsEarlier(sc *scope, n yamldoc.Node, d *link.Dimension, earlier []yamldoc.Entry) {
	var names []string
	for _, e := range earlier {
		names = append(names, e.Name)
	}
	switch {
	case d.Suits == "" || slices.Contains(names, d.Suits):
	case d.Suits == "mate" && sc.d.part.Finishes != d.ID && (sc.d.part.Finishes == "" || sc.d.dims[sc.d.part.Finishes]):
		n.Fault(d.ID+" suits the mate, and is not the size this file finishes", "write finishes: "+d.ID+", or name an earlier dimension")
	case d.Suits == "mate":
	case sc.d.dims[d.Suits]:
		n.Fault(d.ID+" suits "+d.Suits+", which is not cut before it", "put "+d.Suits+" above it, or name an earlier dimension")
	default:
		n.Fault("there is no dimension "+d.Suits+" to suit", fault.DidYouMean(d.Suits, append(names, "mate")))
	}
}

// made tells a size or a step from a pick that is none, or that holds no size.
func (l *loader) made(sc *scope, n yamldoc.Node, pick string) {
	from, ok := sc.d.picks[pick]
	switch {
	case pick == "" || sc.d.bad[pick]:
	case !ok:
		n.Fault(pick+" is no pick of this file", fault.DidYouMean(pick, pickNames(sc.d)))
	default:
		if _, ok := sc.columnType(tableOf(from), "tolerance"); !ok {
			n.Fault(pick+" is a row of "+tableOf(from)+", which has no column tolerance", "name the machine that makes it")
		}
	}
}

func pickNames(d *draft) []string {
	var out []string
	for n := range d.picks {
		out = append(out, n)
	}
	return sorted(out)
}
