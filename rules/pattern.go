package rules

import (
	"cmp"
	"maps"
	"regexp"
	"slices"
	"strings"

	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// Pattern is a way in which fits wear: what is seen, why it came about, what
// must be cured first, and how a hasty repair fails again.
type Pattern struct {
	ID, Says string
	Cause    string
	Cure     string     // before any repair
	Repair   string     // which kind of repair suits
	Again    string     // what becomes of a repair that ignores it; "" nothing much
	Order    int        // the lesser is told first; those alike stand in the order of their files
	Part     *link.Part // its one need is what is seen
}

var patternKeys = []string{"schema", "id", "told", "says", "numbers", "define", "when", "cause", "cure", "repair", "again", "from"}

// patterns reads diagnosis/: one pattern a file.
func (l *loader) patterns() {
	ids, docs := l.in("diagnosis")
	for i, doc := range docs {
		root := doc.Root
		if !root.Keys(patternKeys...) {
			continue
		}
		root.Need("schema", "write diagnosis/1").Word("diagnosis/1")
		l.named(root, ids[i])
		d := newDraft(doc, "diagnosis", link.Diagnosis, ids[i])
		l.names(d)
		sc := &scope{l: l, d: d}
		for _, e := range root.Get("define").Entries() {
			if def := d.defines[e.Name]; def != nil {
				sc.keep(def)
			}
		}
		p := Pattern{ID: ids[i], Part: d.part, Says: said(root, "says", "say what is seen in a line"), Cause: said(root, "cause", "say what most likely did it"),
			Cure: said(root, "cure", "say what to put right first"), Repair: said(root, "repair", "say which kind of repair suits"), Again: root.Get("again").Text()}
		r := link.Rule{ID: p.ID, Strength: link.Should, Ground: link.Practice, Why: p.Says, At: root.At()}
		r.From, r.Grade = l.from(root)
		when := root.Need("when", "say what is seen, as an expression")
		for _, key := range []string{"says", "cause", "cure", "repair", "again"} {
			toldNumbers(d, root.Get(key))
		}
		if r.Test = sc.expr(when, yesNo); r.Test == nil {
			continue
		}
		l.beforeSizes(sc, r.Test, when, "a pattern")
		l.beforeOptions(r.Test, when)
		p.Order = order(root.Get("told"))
		d.part.Says, d.part.Needs = p.Says, []link.Rule{r}
		l.base.Patterns = append(l.base.Patterns, p)
	}
	slices.SortStableFunc(l.base.Patterns, func(a, b Pattern) int { return cmp.Compare(a.Order, b.Order) })
}

// inBraces is a number of the file named in a sentence.
var inBraces = regexp.MustCompile(`\{[^{}]*\}?`)

// toldNumbers tells what stands in braces in a sentence of a pattern and is no
// number of its file: no size is worked out when patterns are told.
func toldNumbers(d *draft, n yamldoc.Node) {
	for _, b := range inBraces.FindAllString(n.Text(), -1) {
		if name := strings.Trim(b, "{}"); d.numbers[name] == nil || !strings.HasSuffix(b, "}") {
			n.Fault(b+" is no number of this file", fault.DidYouMean(name, slices.Sorted(maps.Keys(d.numbers))))
		}
	}
}

// Speak puts the numbers of the file into a sentence of the pattern.
func (p *Pattern) Speak(text string, s quantity.Speech) string {
	return inBraces.ReplaceAllStringFunc(text, func(b string) string {
		for i := range p.Part.Numbers {
			n := &p.Part.Numbers[i]
			switch {
			case n.ID != strings.Trim(b, "{}"):
			case n.Low == n.High:
				return s.Say(n.Low, n.Dim)
			default:
				return s.Say(n.Low, n.Dim) + " to " + s.Say(n.High, n.Dim)
			}
		}
		return b
	})
}

// orders are the words for where a pattern stands among the others; one that
// says nothing stands in the middle.
var orders = []string{"first", "early", "", "late", "last"}

func order(n yamldoc.Node) int {
	word := ""
	if n.Present() {
		word = n.Word("first", "early", "late", "last")
	}
	return slices.Index(orders, word)
}

// beforeOptions tells a pattern that hangs on what is done to the parts: it is
// looked for before any option is.
func (l *loader) beforeOptions(e *lang.Expr, n yamldoc.Node) {
	e.Names(func(name string, _ lang.Type) {
		if strings.HasPrefix(name, "option.") && name != "option.purpose" {
			n.Fault("a pattern hangs on "+name+", and it is looked for before any option is", "ask about what is found; option.purpose is what the fit is for")
		}
	})
}

func said(n yamldoc.Node, key, remedy string) string { return n.Need(key, remedy).Text() }
