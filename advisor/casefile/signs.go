package casefile

import (
	"maps"
	"slices"

	"wornfit/rules/yamldoc"
)

// What may be said of every sign: nobody looked, or it was looked for and is
// not there.
const (
	NotLooked = "not looked"
	NotThere  = "not there"
)

// Signs are what can be seen on a surface, each with its closed words. The two
// words above go with all of them. A vocabulary entry hub.seen_X or
// shaft.seen_X adds a sign, or replaces the words of one.
var Signs = map[string][]string{
	"wear_side":    {"one side", "both sides", "all round"},
	"wear_ends":    {"near end", "far end", "both ends", "middle", "even"},
	"score":        {"along", "around", "slanting"},
	"powder":       {"red", "black", "grey", "bronze"},
	"torn_metal":   {"smeared", "picked up", "torn"},
	"heat_tint":    {"straw", "brown", "blue", "grey"},
	"pits":         {"rust", "flaking", "electric"},
	"ball_marks":   {"there"},
	"polished":     {"bright", "burnished"},
	"turned":       {"bush turned", "ring turned", "witness marks"},
	"keyway":       {"crushed", "rocked", "sound"},
	"beach_marks":  {"there"},
	"oil_hole":     {"open", "blocked", "none made"},
	"oil_found":    {"oil", "grease", "dry", "dirty", "water in it"},
	"edge_bearing": {"near end", "far end", "crossed"},
}

// seen reads the signs of one surface.
func (r *reader) seen(n yamldoc.Node, s Side) map[string]string {
	if !n.Present() || n.IsScalar() && n.Text() == "unknown" {
		return nil
	}
	signs := maps.Clone(Signs)
	prefix := string(s) + ".seen_"
	for _, e := range r.v.Under(string(s)) {
		if len(e.Name) > len(prefix) && e.Name[:len(prefix)] == prefix && e.Type.Words != nil {
			signs[e.Name[len(prefix):]] = e.Type.Words.List
		}
	}
	n.Keys(slices.Sorted(maps.Keys(signs))...)
	out := map[string]string{}
	for _, e := range n.Entries() {
		if words, ok := signs[e.Name]; ok {
			out[e.Name] = e.Value.Word(append([]string{NotLooked, NotThere}, words...)...)
		}
	}
	return out
}
