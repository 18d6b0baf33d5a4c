package casefile

import (
	"maps"
	"slices"
	"strings"

	"wornfit/rules"
	"wornfit/rules/fault"
	"wornfit/rules/yamldoc"
)

// The case says a few names of the vocabulary in its own words: key in the
// file -> the name's last word.
var saidAs = map[string]string{
	"how_known":       "material_known",
	"if_spoiled":      "worth",
	"between_centres": "between",
	"set_up":          "offset",
}

// Names that have more shape than a plain key, with where they are written.
var writtenElsewhere = map[string]string{
	"material":       "write material: with one id or a list of candidates",
	"material_known": "write how_known:",
	"worth":          "write if_spoiled:",
	"price":          "write it under buys:",
	"days":           "write it under buys:",
	"score":          "write it under the fit, deepest_score: {hub: ..., shaft: ...}",
	"new_stated":     "write when_new: 0.03 mm to 0.08 mm",
	"new_least":      "write when_new: 0.03 mm to 0.08 mm",
	"new_most":       "write when_new: 0.03 mm to 0.08 mm",
	"load_stated":    "write load: under duty, and length: under the fit",
	"keyway_width":   "write it under next_to_it: - {kind: keyway, distance: 0 mm, size: 8 mm}",
	"inch_made":      "write nominal: in the units the fit was made in",
	"bore_stated":    "write bore: under the shaft, 0 mm when it is solid",
	"gauge_inside":   "list the gauge under gauges:",
	"gauge_outside":  "list the gauge under gauges:",
}

// leaf returns the entry a plain key stands for.
func (r *reader) leaf(prefix, key string) (*rules.Entry, bool) {
	word := key
	if w, ok := saidAs[key]; ok && prefix != "shop" {
		word = w
	} else if elsewhere(word) != "" {
		return nil, false
	}
	e, ok := r.v.Entry(prefix + "." + word)
	if !ok || e.Role == "reading" {
		return nil, false
	}
	return e, true
}

func elsewhere(word string) string {
	if strings.HasPrefix(word, "near_") {
		return "write it under next_to_it:"
	}
	if strings.HasPrefix(word, "seen_") {
		return "write it under the fit, seen:"
	}
	return writtenElsewhere[word]
}

// plain lists the keys that leaf knows under a prefix.
func (r *reader) plain(prefix string) []string {
	var out []string
	for _, e := range r.v.Under(prefix) {
		word := strings.TrimPrefix(e.Name, prefix+".")
		for key, w := range saidAs {
			if w == word {
				out = append(out, key)
			}
		}
		if e.Role != "reading" && elsewhere(word) == "" {
			out = append(out, word)
		}
	}
	return out
}

// keys tells unknown keys of a map whose plain keys are vocabulary names. A
// name that is written elsewhere is told where.
func (r *reader) keys(n yamldoc.Node, prefix string, structured ...string) bool {
	if !n.Present() {
		return false
	}
	if !n.IsMap() {
		return n.Keys()
	}
	allowed := append(structured, r.plain(prefix)...)
	for _, e := range n.Entries() {
		if slices.Contains(allowed, e.Name) {
			continue
		}
		remedy := fault.DidYouMean(e.Name, allowed)
		if _, known := r.v.Entry(prefix + "." + e.Name); known {
			if remedy = elsewhere(e.Name); remedy == "" {
				remedy = "give the readings; this is worked out from them"
			}
		}
		r.tell(e.KeyAt, e.Value.Key, "there is no key "+e.Name+" here", remedy)
	}
	return true
}

// given reads the plain keys of a map; structured keys are left alone.
func (r *reader) given(n yamldoc.Node, prefix string, structured ...string) Givens {
	out := Givens{}
	for _, e := range n.Entries() {
		if slices.Contains(structured, e.Name) {
			continue
		}
		if entry, ok := r.leaf(prefix, e.Name); ok {
			out[entry.Name] = r.entry(e.Value, entry)
		}
	}
	return out
}

// givens reads a map that holds plain keys only.
func (r *reader) givens(n yamldoc.Node, prefix string, structured ...string) Givens {
	if !r.keys(n, prefix, structured...) {
		return Givens{}
	}
	return r.given(n, prefix, structured...)
}

// columns reads the plain keys of a row the case gives: a machine, a datum.
func (r *reader) columns(n yamldoc.Node, table string, not []string, structured ...string) map[string]Value {
	byKey := map[string]*rules.Entry{}
	for _, e := range r.v.Tables[table] {
		key := e.Name[strings.LastIndex(e.Name, ".")+1:]
		if slices.Contains(not, key) {
			continue
		}
		byKey[key] = e
		for said, word := range saidAs {
			if word == key && table == "machines" {
				delete(byKey, key)
				byKey[said] = e
			}
		}
	}
	if !n.IsMap() {
		n.Keys()
		return nil
	}
	n.Keys(append(structured, slices.Sorted(maps.Keys(byKey))...)...)
	out := map[string]Value{}
	for _, e := range n.Entries() {
		if entry, ok := byKey[e.Name]; ok && !slices.Contains(structured, e.Name) {
			out[entry.Name[strings.LastIndex(entry.Name, ".")+1:]] = r.entry(e.Value, entry)
		}
	}
	return out
}
