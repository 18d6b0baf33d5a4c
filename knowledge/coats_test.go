package knowledge_test

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"wornfit/advisor"
	"wornfit/advisor/answer"
	"wornfit/advisor/casefile"
	"wornfit/rules"
)

// coated is the answer to the case of coats, changed word for word; options
// named in only are worked out in full.
func coated(t *testing.T, base *rules.Base, only []string, changes ...string) *answer.Answer {
	t.Helper()
	file := filepath.Join("tests", "cases", "coated.yaml")
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer(changes...).Replace(string(data))
	if len(changes) > 0 && text == string(data) {
		t.Fatalf("nothing in %s reads %q", file, changes[0])
	}
	c, faults := casefile.Read(file, []byte(text), base.Vocabulary, casefile.IDs{"materials": base.IDs("materials"), "machines": base.IDs("machines")})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	a, err := advisor.Advise(base, c, c.Fits[0], advisor.Ask{Speech: c.Speech(), Only: only, All: true})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func optionOf(t *testing.T, a *answer.Answer, id string) *answer.Option {
	t.Helper()
	at := slices.IndexFunc(a.Options, func(o answer.Option) bool { return o.ID == id })
	if at < 0 {
		t.Fatalf("there is no option %s", id)
	}
	return &a.Options[at]
}

// What the firm asks stands in the price of a coat that is sent out, once; its
// days in the time out of service. A step of the firm's that is not done must
// not take the price along.
func TestAFirmsPriceIsInTheCoat(t *testing.T) {
	a := coated(t, shipped(t), nil)
	for id, want := range map[string]struct{ price, days float64 }{
		"shaft-spray+hub-true-up": {140, 6},
		"shaft-plate+hub-true-up": {160, 8},
	} {
		price, wait := 0.0, 0.0
		for _, s := range optionOf(t, a, id).Steps {
			if s.SentOut {
				price, wait = price+s.Costs, wait+s.Wait
			}
		}
		if price != want.price || wait != want.days*86400 {
			t.Errorf("%s: the firm asks %g and takes %g days; the case says %g and %g", id, price, wait/86400, want.price, want.days)
		}
	}
}

// The rod for a coat is the ring between undercut and built-up size, 4 mm over
// each end of a 40 mm fit, in bronze of 8400 kg/m3, a fifth of it lost.
func TestRodByHand(t *testing.T) {
	a := coated(t, shipped(t), []string{"shaft-braze+hub-true-up"}, "[oven, oxy-acetylene, tig]", "[oven, oxy-acetylene]")
	o := optionOf(t, a, "shaft-braze+hub-true-up")
	value := map[string]float64{}
	for _, v := range o.Values {
		value[strings.TrimPrefix(v.Name, "shaft/braze.")] = v.Value
	}
	size := map[string]float64{}
	for _, d := range o.Dimensions {
		size[d.ID] = d.Target
	}
	built, cut := value["build_up_size"], size["undercut_size"]
	if got := built - size["shaft_size"]; math.Abs(got-2*1.125e-3) > 1e-9 { // 0.75 to 1.5 mm each side, at its middle
		t.Errorf("it is built %g over the finished size", got)
	}
	want := math.Pi / 4 * (built*built - cut*cut) * 0.048 * 8400 / 0.8
	if got := value["rod"]; math.Abs(got-want) > 1e-6*want {
		t.Errorf("the rod weighs %g kg, by hand %g", got, want)
	}
}

// No strip goes on a journal with a slot, a flat or a spline beside it, in any
// coat; with none of them, a coat that is turned is polished.
func TestNoStripOnASlottedCoat(t *testing.T) {
	base := shipped(t)
	polishes := func(a *answer.Answer) (n int) {
		for _, o := range a.Options {
			for _, s := range o.Steps {
				if strings.HasSuffix(s.ID, "-polish") {
					n++
				}
			}
		}
		return n
	}
	if polishes(coated(t, base, nil)) == 0 {
		t.Error("no coat is polished: the test looks for a step that is gone")
	}
	from := "    next_to_it: none\n\ngauges"
	for _, kind := range []string{"keyway", "flat", "spline"} {
		a := coated(t, base, nil, from, "    next_to_it: [{kind: "+kind+", distance: 0 mm, size: 8 mm}]\n\ngauges")
		if n := polishes(a); n > 0 {
			t.Errorf("%d coats are polished with strip beside a %s", n, kind)
		}
	}
}

// A shop that has a brush only lays no chrome; one without a grinder sprays what
// can be turned; one with an arc only melts no zinc.
func TestWhatGoesOnIsWhatTheShopCanPutOn(t *testing.T) {
	base := shipped(t)
	for _, c := range []struct {
		name, option, pick, want string
		changes                  []string
	}{
		{"a works plates", "shaft-plate+hub-true-up", "shaft/plate.filler", "hard-chrome", nil},
		{"a brush here", "shaft-plate+hub-true-up", "shaft/plate.filler", "brush-nickel", []string{"[oven, oxy-acetylene, tig]", "[oven, brush-plating]"}},
		{"a grinder", "shaft-spray+hub-true-up", "shaft/spray.filler", "sprayed-steel", nil},
		{"no grinder", "shaft-spray+hub-true-up", "shaft/spray.filler", "sprayed-bronze", []string{"does: [grind]", "does: [ream]"}},
		{"a grinder and a steel bore", "shaft-spray+hub-true-up", "shaft/spray.filler", "sprayed-molybdenum", []string{"material: grey-iron-30", "material: steel-1045"}},
		{"a flame", "shaft-braze+hub-true-up", "shaft/braze.filler", "bronze-rod", nil},
		{"an arc alone", "shaft-braze+hub-true-up", "shaft/braze.filler", "silicon-bronze", []string{"[oven, oxy-acetylene, tig]", "[oven, tig]"}},
		{"steel that is known", "shaft-weld+hub-true-up", "shaft/weld.filler", "mild-steel-weld", nil},
		{"steel that is a guess", "shaft-weld+hub-true-up", "shaft/weld.filler", "stainless-312", []string{"material: steel-1045\n    how_known: known", "material: steel-1045\n    how_known: guessed"}},
		{"a grey iron bore", "shaft-leave+hub-weld", "hub/weld.filler", "nickel-rod", []string{"skill: some", "skill: practised"}},
	} {
		o := optionOf(t, coated(t, base, nil, c.changes...), c.option)
		if got := o.Picks[c.pick]; got != c.want {
			t.Errorf("%s: %s is %q, want %s (%s)", c.name, c.pick, got, c.want, o.Verdict)
		}
	}
}
