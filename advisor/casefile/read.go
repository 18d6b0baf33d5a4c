package casefile

import (
	"slices"
	"strconv"

	"wornfit/rules"
	"wornfit/rules/fault"
	"wornfit/rules/yamldoc"
)

// IDs lists the ids that a case may name, by the table or folder they stand
// in: "materials", "purpose". Ids of a table that is not in the map are not
// checked here.
type IDs map[string][]string

// purposes stand in for IDs["purpose"] when that is not given.
var purposes = []string{"running", "oscillating", "sliding", "press-fit", "keyed-hub", "bearing-seat"}

// Read reads a case. The case is complete only when the list is empty; with
// faults it holds what could be read. name is the file's name in the faults.
func Read(name string, data []byte, v *rules.Vocabulary, ids IDs) (*Case, fault.List) {
	r := &reader{doc: yamldoc.Read(name, data), v: v, ids: ids, c: &Case{File: name}, money: map[string]int{}, told: map[string]bool{}}
	if r.doc.Root.IsMap() {
		r.top(r.doc.Root)
		r.c.Inch = r.inch > 0
		r.check()
	} else if len(r.doc.Faults) == 0 {
		r.doc.Root.Fault("this is no case file", "start with `schema: case/1` and one `key: value` a line")
	}
	r.doc.Faults.Sort()
	return r.c, r.doc.Faults
}

type reader struct {
	doc   *yamldoc.Doc
	v     *rules.Vocabulary
	ids   IDs
	c     *Case
	money map[string]int  // how often each currency is typed
	told  map[string]bool // keys told once for all fits
	inch  int             // readings typed in inch, less those in mm
}

func (r *reader) tell(at fault.Place, key, says, remedy string) {
	r.doc.Faults.Add(at, key, says, remedy)
}

func (r *reader) top(n yamldoc.Node) {
	n.Keys("schema", "title", "if_it_lets_go", "class", "parts", "fits", "gauges", "duty", "shop", "buys", "wishes", "made", "notes")
	if s := n.Need("schema", "write schema: case/1"); s.Present() && s.Text() != "case/1" {
		s.Fault("the schema is "+strconv.Quote(s.Text()), "write schema: case/1")
	}
	r.c.Title = n.Need("title", "say in a line what it is").Text()
	r.c.Notes = n.Get("notes").Text()
	r.harm(n.Get("if_it_lets_go"))
	r.c.Class = n.Get("class").Word(Classes...)
	r.gauges(n.Get("gauges"))
	r.parts(n.Need("parts", "list the hub and the shaft, each with `is: hub` or `is: shaft`"))
	r.fits(n.Need("fits", "list at least one fit, with its hub, shaft and purpose"))
	r.c.Duty = r.givens(n.Get("duty"), "duty")
	r.shop(n.Get("shop"))
	r.buys(n.Get("buys"))
	r.wishes(n.Get("wishes"))
	r.made(n.Get("made"))
}

// harm reads if_it_lets_go. Missing or unknown is no fault: the question is
// asked instead, and nothing ranked.
func (r *reader) harm(n yamldoc.Node) {
	if w := n.Text(); w == "" || w == "unknown" {
		return
	}
	r.c.Harm = Harm(slices.Index(harmWords, n.Word(harmWords...)) + 1)
}

// texts reads a list of plain words or sentences; the word none is an empty list.
func texts(n yamldoc.Node) []string {
	var out []string
	for _, i := range n.Items() {
		if t := i.Text(); t != "" && t != "none" {
			out = append(out, t)
		}
	}
	return out
}

// oneID tells an id that stands twice in a list.
func (r *reader) oneID(seen map[string]fault.Place, n yamldoc.Node, what string) string {
	id := n.Text()
	if id == "" {
		return ""
	}
	if first, again := seen[id]; again {
		r.doc.Faults = append(r.doc.Faults, fault.Fault{At: n.At(), Key: n.Key,
			Says:   "the " + what + " id " + id + " is already used on line " + strconv.Itoa(first.Line),
			Remedy: "give each " + what + " an id of its own", Also: []fault.Place{first}})
	}
	seen[id] = n.At()
	return id
}
