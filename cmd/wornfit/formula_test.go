package main

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"wornfit/calc/catalogue"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	"wornfit/calc/quantity"
	"wornfit/cmd/wornfit/render"
)

// shippedMetals reads the materials once for all tests of a function.
func shippedMetals(t *testing.T) *metals {
	return &metals{load: func() (metalTable, error) { return (&flags{}).metalTable(worldAt(t)) }}
}

// Every calculation of the catalogue is listed, can be shown at every width and
// in every unit, and its example is a call that has an answer: the one of Value.
func TestEveryCalculationIsListedShownAndRun(t *testing.T) {
	list := try(t, nil, "formula", "list")
	m := shippedMetals(t)
	for _, k := range catalogue.All() {
		name := render.Dashed(k.Name)
		if !strings.Contains(list.out, "  "+name+"  ") {
			t.Errorf("%s is not listed", name)
		}
		for _, units := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
			s := quantity.Speech{Units: units}
			words := example(k, s, m)
			if len(words) == 0 {
				t.Errorf("%s has no example", name)
				continue
			}
			shell := unquoted(words)
			puts, _, err := readArguments(k, shell, m)
			if err != nil {
				t.Errorf("%s %s: %v", name, shell, err)
				continue
			}
			r, err := work(k, puts)
			if err != nil {
				t.Errorf("%s %s: %v", name, shell, err)
				continue
			}
			if want := k.Value(numbersOf(t, k, shell, m)); r.Result != want {
				t.Errorf("%s %s = %v, by its own numbers %v", name, shell, r.Result, want)
			}
			r.ShowSteps = true
			told, _ := catalogue.Told(k.Name)
			r.Told = told
			for _, width := range []int{36, 60, 67, 68, 80, 120} {
				l := render.Look{Width: width, ASCII: width == 60}
				fits(t, name, l, render.FormulaShow(l, render.Formula{Kernel: k, Told: told, Example: words}, render.Voice{Speech: s}))
				fits(t, name, l, render.FormulaRun(l, r, render.Voice{Speech: s}))
			}
		}
	}
	for _, width := range []int{36, 60, 80, 120} {
		fits(t, "list", render.Look{Width: width}, render.FormulaList(render.Look{Width: width}, catalogue.Topics()))
	}
}

// numbersOf reads the words of an example by itself: each argument's number, or
// what the table has in the middle for a metal.
func numbersOf(t *testing.T, k kernel.Kernel, words []string, m *metals) []float64 {
	t.Helper()
	base, err := m.base()
	if err != nil {
		t.Fatal(err)
	}
	x := make([]float64, len(k.Args))
	for i := range x {
		x[i] = math.NaN()
	}
	for _, word := range words {
		name, text, _ := strings.Cut(word, "=")
		name = strings.ReplaceAll(name, "-", "_")
		for i, a := range k.Args {
			if a.Name == name && !base.Has("materials", text) {
				got, err := render.ReadArg(text, a)
				if err != nil {
					t.Fatal(err)
				}
				x[i] = got.Best
			}
		}
		for _, row := range base.Rows("materials") {
			if row.ID != text {
				continue
			}
			for i, a := range k.Args {
				side, last := "", a.Name
				if at := strings.LastIndex(last, "_"); at >= 0 {
					side, last = last[:at], last[at+1:]
				}
				if c, ok := metalColumns[last]; ok && c.dim == a.Dim && a.Range.Has(c.steel) && (side == "" || side == name) {
					x[i] = (row.Columns[c.column].Value.Lo + row.Columns[c.column].Value.Hi) / 2
				}
			}
		}
	}
	return x
}

// The give of an iron hub by hand, out of its table: E 90 to 113 GPa, ν 0.26.
func TestAMetalGivesItsNumbers(t *testing.T) {
	got := try(t, nil, strings.Fields("formula run hub-give bore=40mm outside=80mm hub=grey-iron-30 --json")...)
	var r runJSON
	if err := json.Unmarshal([]byte(got.out), &r); err != nil || got.code != 0 {
		t.Fatalf("exit %d, %v: %s", got.code, err, got.err)
	}
	k := (80.*80 + 40*40) / (80*80 - 40*40)
	want := (k + 0.26) / 101.5e9
	if result := r.Results["hub_give"]; math.Abs(result.Value/want-1) > 1e-12 || result.Unit != "1/Pa" { // rounding alone
		t.Errorf("%+v, want %v", result, want)
	}
	if r.Grade != "memory" || r.Arguments[2].Metal != "grey-iron-30" || r.Arguments[2].Low != 90e9 || r.Arguments[2].High != 113e9 || r.Arguments[2].Grade != "memory" {
		t.Errorf("grade %s, modulus %+v: the metal and how it is known are not told", r.Grade, r.Arguments[2])
	}
	typed := try(t, nil, strings.Fields("formula run hub-give bore=40mm outside=80mm hub=grey-iron-30 modulus=100GPa poisson=0.26 --json")...)
	if err := json.Unmarshal([]byte(typed.out), &r); err != nil {
		t.Fatal(err, typed.err)
	}
	if r.Results["hub_give"].Value == want || r.Arguments[2].Value != 100e9 || r.Grade != "derived" {
		t.Errorf("what is typed does not count before the metal's: %+v, grade %s", r.Arguments[2], r.Grade)
	}
}

// What a calculation answers is what its documented function does: a press fit
// of a published kind, checked by hand, in inches.
func TestInchAndMetricAgree(t *testing.T) {
	var mm, inch runJSON
	for text, r := range map[string]*runJSON{
		"seat=50.8mm length=38.1mm pressure=27.5790291726mpa friction=0.12": &mm,
		"seat=2in length=1-1/2in pressure=4000psi friction=12%":             &inch,
	} {
		text = strings.Replace(text, "mpa", "MPa", 1)
		got := try(t, nil, append([]string{"formula", "run", "grip-torque", "--json"}, strings.Fields(text)...)...)
		if err := json.Unmarshal([]byte(got.out), r); err != nil {
			t.Fatal(err, got.err)
		}
	}
	a, b := mm.Results["grip_torque"], inch.Results["grip_torque"]
	hand := math.Pi * 2 * 1.5 * 4000 * 0.12 * 1                                                    // lbf in: friction on the circumference, at a radius of 1 in
	if math.Abs(a.Value/b.Value-1) > 1e-9 || math.Abs(b.Value/0.1129848290276167/hand-1) > 1e-12 { // 1 lbf in is 0.0254 m times 4.4482216 N
		t.Errorf("%v N m in mm, %v in inches, %v lbf in by hand", a.Value, b.Value, hand)
	}
	if !strings.HasSuffix(a.Spoken, "N m") || !strings.HasSuffix(b.Spoken, "lbf ft") {
		t.Errorf("said %q and %q: not in the units typed", a.Spoken, b.Spoken)
	}
}

func TestRangesAsSaidLieWithin(t *testing.T) {
	ends := 0
	for _, k := range catalogue.All() {
		for _, a := range k.Args {
			for _, units := range []quantity.System{quantity.Metric, quantity.Inch} {
				low, high := (render.Voice{Speech: quantity.Speech{Units: units}}).Range(a)
				for _, text := range []string{low, high} {
					ends++
					got, err := render.ReadArg(text, a)
					if err != nil || !a.Range.Has(got.Best) {
						t.Errorf("%s of %s: %q reads as %v, %v; the range is %v", a.Name, k.Name, text, got.Best, err, a.Range)
					}
				}
			}
		}
	}
	if ends < 500 {
		t.Errorf("only %d ends looked at", ends)
	}
}

// What is wrong is named with its value, and what to do; exit 2, nothing on stdout.
func TestFormulaErrors(t *testing.T) {
	const give = "formula run hub-give "
	for args, says := range map[string][]string{
		"formula shwo":             {"there is no command shwo", "did you mean show?"},
		"formula list zzzz":        {"no calculation is about zzzz", "names them all"},
		"formula list kye":         {"did you mean key?"},
		"formula show":             {"wants the name of a calculation"},
		"formula show hub-giv":     {"there is no calculation hub-giv", "did you mean hub-give?"},
		"formula show pressure":    {"there is no calculation pressure", "joint-pressure"},
		"formula run":              {"wants the name of a calculation and its arguments"},
		give:                       {"still wants bore (bore of the hub), outside (outside diameter)", "bore=30mm", "hub=grey-iron-30"},
		give + "bore=2 in":         {"in is no ARGUMENT=VALUE", "'bore=2 in'"},
		give + "bore=2in in":       {"in is no ARGUMENT=VALUE", "'bore=2in in'"},
		give + "2in":               {"2in is no ARGUMENT=VALUE", "such as bore=30mm"},
		give + "=2in":              {"=2in has no name", "it wants bore, outside, modulus, poisson"},
		give + "bore=":             {"bore: nothing is written"},
		give + "bore=1kg":          {"unit of mass, length is wanted"},
		give + "bore=nan":          {"no number"},
		give + "bore=1e9mm":        {"power of ten"},
		give + "bore=25H7":         {"size with a class", "write one number"},
		give + "boer=1in":          {"hub-give wants no boer", "did you mean bore?"},
		give + "zzzzzz=1in":        {"hub-give wants no zzzzzz", "it wants bore"},
		give + "bore=1in bore=2in": {"bore is given twice: 1in and 2in"},
		give + "bore=0.01mm outside=2in hub=grey-iron-30":                   {"bore is 0.01mm, under what hub-give is for: 0.1 mm to 2 m", "unit"},
		give + "bore=1in outside=200in hub=grey-iron-30":                    {"outside is 200in, over what hub-give is for", "78.7"},
		give + "bore=1in outside=2in hub=ptfe":                              {"the ptfe's, under what hub-give is for"},
		give + "bore=2in outside=1in hub=grey-iron-30":                      {"bore of the hub is 50.8 mm", "less than its outside diameter"},
		give + "bore=1in outside=2in hub=grey-iron-3":                       {"there is no metal grey-iron-3", "did you mean grey-iron-30?"},
		give + "bore=1in outside=2in hub=unobtainium":                       {"there is no metal unobtainium", "such as grey-iron-30"},
		give + "bore=1in outside=2in shaft=grey-iron-30":                    {"wants no metal of shaft", "hub=METAL"},
		give + "bore=1in outside=2in hub=ptfe material=steel-1045":          {"a metal is given twice"},
		"formula run sleeve-growth bore=1in hub=steel-1045":                 {"wants no metal of hub", "write material=METAL or sleeve=METAL"},
		"formula run backed-bush-give hub=steel-1045":                       {"wants no metal of hub", "bush=METAL"},
		"formula run grip-torque hub=steel-1045":                            {"wants no metal of hub", "takes no metal"},
		"formula run key-shear-torque shaft=steel-1045":                     {"shaft:"},
		"formula run grip-torque seat=1in --units yard":                     {`--units knows no "yard"`, "--units both"},
		"formula show hub-give --units cm":                                  {"--units knows no"},
		"formula run hub-give --knowledge /no/such hub=steel-1045 bore=1mm": {"there is no folder /no/such"},
	} {
		got := try(t, nil, strings.Fields(args)...)
		if got.code != exitUnknown || got.out != "" {
			t.Errorf("%s: exit %d, stdout %q", args, got.code, got.out)
		}
		lines := strings.Split(strings.TrimSuffix(got.err, "\n"), "\n")
		if len(lines) > 2 || strings.HasSuffix(lines[len(lines)-1], ".") {
			t.Errorf("%s: not two plain lines: %q", args, got.err)
		}
		for _, text := range says {
			if !strings.Contains(got.err, text) {
				t.Errorf("%s does not say %q: %s", args, text, got.err)
			}
		}
	}
}

// A metal is never put in for another part than the one it was given for.
func TestSidesAreToldApart(t *testing.T) {
	arg := func(name string, d quantity.Dim) kernel.Arg {
		return kernel.Arg{Name: name, Says: name, Dim: d, Range: interval.Of(0, 1e12)}
	}
	for _, c := range []struct {
		name string
		args []kernel.Arg
		want string
	}{
		{"ring_push", []kernel.Arg{arg("modulus", quantity.StressDim), arg("poisson", quantity.Number)}, "material ring"},
		{"ring_in_hub", []kernel.Arg{arg("modulus", quantity.StressDim)}, "material"}, // two parts in the name
		{"hub_push", []kernel.Arg{arg("modulus", quantity.StressDim), arg("hub_give", quantity.PerStressDim)}, "material"},
		{"push", []kernel.Arg{arg("cold_ring_yield", quantity.StressDim), arg("bolt_density", quantity.DensityDim)}, "bolt cold_ring"},
		{"push", []kernel.Arg{arg("ring_yield", quantity.Number)}, ""}, // not a stress
		{"push", []kernel.Arg{arg("yielding", quantity.StressDim)}, ""},
		{"push", []kernel.Arg{{Name: "oil_density", Says: "oil", Dim: quantity.DensityDim, Range: interval.Of(800, 1000)}}, ""}, // steel is no oil
	} {
		if got := strings.Join(sideNames(sides(kernel.Kernel{Name: c.name, Args: c.args})), " "); got != c.want {
			t.Errorf("%s: sides %q, want %q", c.name, got, c.want)
		}
	}
}

// An angle within a turn is in radians and wants deg or rad; in degrees it is a
// plain number.
func TestAnglesAreTypedWithTheirUnit(t *testing.T) {
	double := func(a kernel.Arg) kernel.Kernel {
		args := []kernel.Arg{a}
		return kernel.Kernel{Name: "twice", Says: "angle twice as wide", Args: args, Value: kernel.Within(args, func(x []float64) float64 { return 2 * x[0] })}
	}
	for _, c := range []struct {
		most  float64
		typed string
		want  float64 // NaN: refused
	}{{1.5, "30deg", math.Pi / 3}, {1.5, "0.5rad", 1}, {1.5, "0.5", math.NaN()}, {90, "30", 60}} {
		k := double(kernel.Arg{Name: "helix_angle", Says: "of the helix", Range: interval.Of(0, c.most)})
		puts, _, err := readArguments(k, []string{"helix-angle=" + c.typed}, shippedMetals(t))
		if math.IsNaN(c.want) {
			if err == nil {
				t.Errorf("%s is taken as %v", c.typed, puts[0].Value)
			}
			continue
		}
		if err != nil {
			t.Error(err)
			continue
		}
		if r, err := work(k, puts); err != nil || math.Abs(r.Result-c.want) > 1e-12 {
			t.Errorf("%s: %v, %v", c.typed, r.Result, err)
		}
	}
	if said := (render.Voice{}).Said(math.Pi/3, render.ResultKind(double(kernel.Arg{})), quantity.Number); said != "60 deg" {
		t.Errorf("an angle of 60 degrees is said %q", said)
	}
}

// A kind that package quantity has no units for is typed and said in SI.
func TestAKindWithoutUnitsIsTypedInSI(t *testing.T) {
	odd := quantity.Dim{Len: 1, Mass: 1, Time: -3, Temp: -2} // of nothing there is
	a := kernel.Arg{Name: "odd", Says: "odd", Dim: odd, Range: interval.Of(1, 100)}
	unit := kernel.SIUnit(odd)
	for text, want := range map[string]float64{"50 " + unit: 50, "2.5" + unit: 2.5, strings.ReplaceAll("7 "+unit, " ", ""): 7} {
		if got, err := render.ReadArg(text, a); err != nil || got.Best != want {
			t.Errorf("%q: %v, %v", text, got.Best, err)
		}
	}
	for _, text := range []string{"50", "50 mm", unit, "", "1 to 2 " + unit} {
		if got, err := render.ReadArg(text, a); err == nil {
			t.Errorf("%q is taken as %v", text, got.Best)
		}
	}
	if said := render.SayArg(quantity.Speech{}, 50, a); said != "50 "+unit {
		t.Errorf("said %q", said)
	}
}

// Whatever is typed, there is an answer or a refusal, never a panic or a NaN.
func TestNonsenseIsAnsweredOrRefused(t *testing.T) {
	m := shippedMetals(t)
	draw := rand.New(rand.NewPCG(1, 2))
	pieces := []string{"=", " ", "-", "0", "1", "-1", ".5", "1/2", "1e9", "9999999999999999999999", "nan", "%", "mm", "in", "thou", "GPa", "psi", "degC", "HB", "rpm",
		"hub", "shaft", "material", "steel-1045", "ptfe", "grey-iron-30", "\"", "°", "±", "\x00", "日"}
	answered, refused := 0, 0
	for _, k := range catalogue.All() {
		sound := example(k, quantity.Speech{}, m)
		for range 300 {
			words := slices.Clone(sound)
			for range 1 + draw.IntN(2) {
				i := draw.IntN(len(words))
				name, _, _ := strings.Cut(words[i], "=")
				text := pieces[draw.IntN(len(pieces))] + pieces[draw.IntN(len(pieces))]
				if draw.IntN(2) == 0 { // another argument's value: sizes that do not go together
					_, text, _ = strings.Cut(sound[draw.IntN(len(sound))], "=")
				}
				words[i] = []string{name + "=" + text, text, name, words[i] + text, text + words[i]}[draw.IntN(5)]
			}
			puts, _, err := readArguments(k, words, m)
			var r render.Ran
			if err == nil {
				r, err = work(k, puts)
			}
			switch {
			case err != nil:
				refused++
			case math.IsNaN(r.Result) || math.IsInf(r.Result, 0):
				t.Errorf("%s %q gives %v", k.Name, words, r.Result)
			default:
				answered++
			}
		}
	}
	if answered < 300 || refused < 3000 {
		t.Errorf("%d answered, %d refused: the draw is of one kind only", answered, refused)
	}
}

// With --ascii a formula can still be read.
func TestFormulasInPlainCharacters(t *testing.T) {
	got := try(t, nil, strings.Fields("formula show grip-torque --ascii")...)
	if !strings.Contains(got.out, "T = mu*pi*d^2*L*p/2") {
		t.Error(got.out)
	}
	for _, k := range catalogue.All() {
		told, ok := catalogue.Told(k.Name)
		page := render.FormulaShow(render.Look{Width: 80, ASCII: true}, render.Formula{Kernel: k, Told: told}, render.Voice{})
		if _, sums, cut := strings.Cut(page, "\nFormula\n"); ok && cut {
			if sums, _, _ = strings.Cut(sums, "\n\n"); strings.Contains(sums, "?") {
				t.Errorf("%s: %s", k.Name, sums)
			}
		}
	}
}

func TestFormulaCompletion(t *testing.T) {
	for args, want := range map[string]string{
		"__complete formula show |":                     "contact-pressure",
		"__complete formula run |":                      "grip-torque",
		"__complete formula run contact-pressure |":     "hub=",
		"__complete formula run grip_torque seat=1in |": "friction=",
	} {
		words := append(strings.Fields(strings.TrimSuffix(args, "|")), "")
		if got := try(t, nil, words...); !strings.Contains(got.out, want) {
			t.Errorf("%s: %q", args, got.out)
		}
	}
}
