package casefile

import (
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"wornfit/rules"
)

func TestShippedCases(t *testing.T) {
	for name, want := range map[string]struct {
		inch  bool
		money string
		harm  Harm
	}{
		"lever-eye": {false, "EUR", MachineDamage},
		"gear-bore": {true, "USD", MachineDamage},
		"loose-hub": {false, "EUR", MachineDamage},
		"people":    {false, "", People},
	} {
		data := file(t, "cases/"+name+".yaml")
		c, told := Read(name+".yaml", data, vocabulary(t), ids(t))
		if len(told) > 0 {
			t.Errorf("%s:\n%v", name, told)
			continue
		}
		if c.Inch != want.inch || c.Money != want.money || c.Harm != want.harm {
			t.Errorf("%s: inch %v, money %q, harm %q; want %+v", name, c.Inch, c.Money, c.Harm, want)
		}
		if !strings.Contains(c.Title, "(invented)") || !strings.Contains(string(data), "# Invented") {
			t.Errorf("%s does not say that it is invented", name)
		}
		if _, barred := c.Barred(); barred != (name == "people") {
			t.Errorf("%s: barred %v", name, barred)
		}
	}
}

// One size typed three ways is one size.
func TestReadingsAsTheGaugeShowsThem(t *testing.T) {
	for _, block := range []string{
		"[{at: 0.2 in, toward: 90 deg, size: 1.2503 in, with: bg}]",
		"{unit: in, with: bg, rows: [[0.2, 90, 1.2503]]}",
		"{unit: in, with: bg, rows: [{at: 0.2, toward: 90, size: 1.2503}]}",
		"{set_to: 1.2500 in, in: tenths, with: bg, rows: [[0.2, 90, +3]]}",
		"{set_to: 1.2500 in, in: thou, with: bg, rows: [[0.2, 90, .3]]}",
		"{set_to: 1.2510 in, in: tenths, unit: in, with: bg, rows: [[0.2, 90, -7]]}",
		"{unit: mm, with: bg, rows: [[0.2 in, 90 deg, 1.2503 in]]}",
	} {
		c, told := read(t, "[{at: 5 mm, toward: 0 deg, size: 30.31 mm, with: bg}]", block)
		for _, f := range told {
			if !strings.Contains(f.Says, "the fit is 30 mm") { // 1.25 in is 31.76 mm: within a tenth
				t.Fatalf("%s: %v", block, told)
			}
		}
		r := c.Fits[0].Surfaces[Hub].Readings[0]
		if got := r.Sizes[0].Lo; math.Abs(got-1.2503*0.0254) > 1e-12 {
			t.Errorf("%s: %.6f in, want 1.2503", block, got/0.0254)
		}
		if math.Abs(r.At.Lo-0.2*0.0254) > 1e-12 || math.Abs(r.Toward.Lo-math.Pi/2) > 1e-12 || r.Gauge == nil || r.Gauge.ID != "bg" {
			t.Errorf("%s: at %v toward %v with %v", block, r.At.Lo, r.Toward.Lo, r.Gauge)
		}
	}
}

// Missing or unknown is a question, not a fault; nothing may be ranked on it.
func TestHarmIsAsked(t *testing.T) {
	for _, line := range []string{"", "if_it_lets_go: unknown\n"} {
		c, told := read(t, "if_it_lets_go: machine damage\n", line)
		if len(told) > 0 || c.Harm != NotSaid {
			t.Errorf("%q: harm %q, told %v", line, c.Harm, told)
		}
	}
	for _, class := range Classes {
		c, told := read(t, "parts:", "class: "+class+"\nparts:")
		_, barred := c.Barred()
		if len(told) > 0 || barred == (class == "other" || class == "none") {
			t.Errorf("class %s: barred %v, told %v", class, barred, told)
		}
	}
}

func TestWhatIsSaid(t *testing.T) {
	c, told := read(t, "nominal: 30 mm", "nominal: 30 H7\n    when_new: 0.02 mm to 0.05 mm tight\n    seen: {hub: {powder: red, pits: not there, score: not looked}}\n    lobes: {hub: reamed, shaft: none}")
	if len(told) > 0 {
		t.Fatal(told)
	}
	f := c.Fits[0]
	if f.WhenNew.Lo != -0.05e-3 || f.WhenNew.Hi != -0.02e-3 {
		t.Errorf("0.02 to 0.05 tight is read as %v to %v", f.WhenNew.Lo, f.WhenNew.Hi)
	}
	s := f.Surfaces[Hub]
	if s.Seen["powder"] != "red" || s.Seen["pits"] != "not there" || s.Seen["score"] != NotLooked || s.Seen["keyway"] != "" {
		t.Errorf("seen %v", s.Seen)
	}
	if s.LobesHow != "reamed" || !f.Surfaces[Shaft].Lobes.Known || f.Surfaces[Shaft].Lobes.Hi != 0 {
		t.Errorf("lobes %q and %+v", s.LobesHow, f.Surfaces[Shaft].Lobes)
	}
}

// Left out, unknown and none are three things.
func TestUnknownIsNotNone(t *testing.T) {
	for near, want := range map[string]bool{"": false, ", next_to_it: unknown": false, ", next_to_it: none": true, ", next_to_it: [{kind: flat}]": true} {
		c, told := read(t, "outside: 62 mm", "outside: 62 mm"+near)
		if p, _ := c.Part("arm"); len(told) > 0 || p.NearStated != want {
			t.Errorf("%q: neighbours stated %v, want %v; told %v", near, p.NearStated, want, told)
		}
	}
	c, _ := read(t, "load: 900 N", "load: unknown")
	if v := c.Duty["duty.load"]; !v.Stated || v.Known {
		t.Errorf("load: unknown is read as %+v", v)
	}
}

// A Rockwell reading becomes a range of Brinell: 60 HRC is 654 HB (ASTM E140
// table 1, from memory), here with 5 % to each side; 15 HRC is off the table.
func TestRockwell(t *testing.T) {
	c, told := read(t, "outside: 62 mm", "outside: 62 mm, hardness: 60 HRC")
	p, _ := c.Part("arm")
	if v := p.Given["hub.hardness"]; len(told) > 0 || math.Abs(v.Lo-654*0.95) > 1e-9 || math.Abs(v.Hi-654*1.05) > 1e-9 {
		t.Errorf("60 HRC is read as %v to %v HB; told %v", v.Lo, v.Hi, told)
	}
	if _, told := read(t, "outside: 62 mm", "outside: 62 mm, hardness: 15 HRC"); len(told) != 1 {
		t.Errorf("15 HRC: told %v, want one fault", told)
	}
}

// A name added to the vocabulary is a key of the case: no Go.
func TestNewNameIsANewKey(t *testing.T) {
	extra := rules.Layer{Name: "extra", Files: fstest.MapFS{"vocabulary/extra.yaml": {Data: []byte(`
- {name: duty.noise, says: how loud it may get, role: given, quantity: word, words: {quiet: indoors, loud: outdoors}, unknown: whole range, changeable: no, example: quiet}
- {name: hub.rim, says: thickness of the rim, role: given, quantity: length, range: 1 mm to 1 m, unknown: whole range, changeable: no, example: 12 mm}
`)}}}
	data := strings.Replace(strings.Replace(sound, "load: 900 N", "load: 900 N, noise: loud", 1), "outside: 62 mm", "outside: 62 mm, rim: 12 mm", 1)
	c, told := Read("case.yaml", []byte(data), vocabulary(t, extra), ids(t))
	if len(told) > 0 {
		t.Fatal(told)
	}
	if p, _ := c.Part("arm"); c.Duty["duty.noise"].Lo != 1 || math.Abs(p.Given["hub.rim"].Lo-0.012) > 1e-12 {
		t.Errorf("noise %+v, rim %+v", c.Duty["duty.noise"], p.Given["hub.rim"])
	}
}

// Whatever is typed, reading ends with a case or with faults, and a fault has a place.
func FuzzRead(f *testing.F) {
	for _, name := range []string{"cases/lever-eye.yaml", "cases/gear-bore.yaml", "cases/people.yaml", "faults/twenty-faults.yaml"} {
		f.Add(file(f, name))
	}
	for _, s := range []string{"", "a: &x b\nc: *x", "parts: {a: }", "fits: [{readings: {hub: {rows: [[]]}}}]", "gauges: {g: {within: ±}}", sound} {
		f.Add([]byte(s))
	}
	v := vocabulary(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		c, told := Read("case.yaml", data, v, nil)
		if c == nil {
			t.Fatal("no case")
		}
		for _, x := range told {
			if x.At.File != "case.yaml" || x.Says == "" {
				t.Fatalf("a fault without place or words: %+v", x)
			}
		}
	})
}
