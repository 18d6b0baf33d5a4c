package casefile

import (
	"maps"
	"slices"
	"strings"

	"wornfit/rules/yamldoc"
)

// NotLooked may be said of every sign: it is not known. The vocabulary's own
// word for a sign that was looked for in vain is `not there`.
const NotLooked = "not looked"

// signs are what can be seen on a surface, each with its closed words: the
// vocabulary's hub.seen_X and shaft.seen_X, written here with spaces.
func (r *reader) signs(s Side) map[string][]string {
	out := map[string][]string{}
	for _, e := range r.v.Under(string(s)) {
		if sign, ok := strings.CutPrefix(e.Name, string(s)+".seen_"); ok && e.Type.Words != nil {
			for _, w := range e.Type.Words.List {
				out[sign] = append(out[sign], strings.ReplaceAll(w, "-", " "))
			}
		}
	}
	return out
}

// seen reads the signs of one surface.
func (r *reader) seen(n yamldoc.Node, s Side) map[string]string {
	if !n.Present() || n.IsScalar() && n.Text() == "unknown" {
		return nil
	}
	signs := r.signs(s)
	n.Keys(slices.Sorted(maps.Keys(signs))...)
	out := map[string]string{}
	for _, e := range n.Entries() {
		if words, ok := signs[e.Name]; ok {
			out[e.Name] = e.Value.Word(append([]string{NotLooked}, words...)...)
		}
	}
	return out
}

// signGivens puts what was seen among the givens, for rules and diagnosis.
func (r *reader) signGivens(f *Fit) {
	for _, side := range Sides {
		for sign, word := range f.Surfaces[side].Seen {
			name := string(side) + ".seen_" + sign
			e, ok := r.v.Entry(name)
			if !ok || word == NotLooked || word == "" {
				continue
			}
			if code, is := e.Type.Words.Code(strings.ReplaceAll(word, " ", "-")); is {
				f.Given[name] = Value{Stated: true, Known: true, Lo: code, Hi: code, Text: word, At: f.Surfaces[side].At}
			}
		}
	}
}
