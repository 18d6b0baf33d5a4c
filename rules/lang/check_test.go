package lang

import (
	"strings"
	"testing"

	"wornfit/calc/quantity"
)

// Dimensions: both sides named in plain words.
func TestUnitsThatDoNotGoTogether(t *testing.T) {
	for _, c := range []struct {
		source string
		want   tell
	}{
		{"wall + force", tell{"wall + force", "wall is length (mm), force is force (N): they cannot be added", "same kind"}},
		{"wall - hub.comes_off", tell{"hub.comes_off", "hub.comes_off is yes or no, not a number", "compared or reckoned"}},
		{"wall >= 0", tell{"wall >= 0", "0 is a plain number: they cannot be compared", "write 0*mm"}},
		{"0 <= pressure", tell{"0 <= pressure", "pressure is stress (MPa)", "write 0*MPa"}},
		{"max(wall, 0)", tell{"max(wall, 0)", "cannot be compared", "write 0*mm"}},
		{"max(wall, coat, force)", tell{"max(wall, coat, force)", "wall is length (mm), force is force (N)", "same kind"}},
		{"grip_torque >= grip_margin*force", tell{"grip_torque >= grip_margin*force", "grip_torque is torque (Nm), grip_margin*force is force (N)", "same kind"}},
		{"(wall + coat)*force + wall", tell{"(wall + coat)*force + wall", "(wall + coat)*force is torque (Nm), wall is length (mm)", "same kind"}},
		{"wall + (coat*tight)", tell{"wall + (coat*tight)", "coat*tight is area (mm2)", "same kind"}},
		{"pressure*wall*wall + grip_torque", tell{"pressure*wall*wall + grip_torque", "is force (N), grip_torque is torque (Nm)", "same kind"}},
		{"sqrt(wall)", tell{"sqrt(wall)", "the square root of length (mm)", "length**2"}},
		{"hub.comes_off ? wall : force", tell{"hub.comes_off ? wall : force", "either length (mm) or force (N)", "alike"}},
		{"hub.comes_off ? wall : it.bush", tell{"hub.comes_off ? wall : it.bush", "either length (mm) or yes or no", "alike"}},
		{"wall ? coat : tight", tell{"wall", "wall is length (mm), not yes or no", "compare it"}},
		{"duty.shock and it.bush", tell{"duty.shock", "duty.shock is a word, not yes or no", `duty.shock == "none"`}},
		{"not wall", tell{"wall", "wall is length (mm), not yes or no", "compare it"}},
		{"wall/0", tell{"wall/0", "a division by zero", "divide by"}},
		{"wall**4*wall**4*wall**4*wall**4", tell{"wall**4*wall**4*wall**4*wall**4", "12th power", "power too many"}},
		{"hub.material + wall", tell{"hub.material", "hub.material is a row of materials, not a number", "hub.material.E"}},
		{"wall == coat", tell{"wall == coat", "never exactly equal", "<= or >="}},
		{"hub.comes_off == true", tell{"hub.comes_off == true", "comparison with true or false", "write hub.comes_off"}},
		{"hub.comes_off != true", tell{"hub.comes_off != true", "comparison with true or false", "write not hub.comes_off"}},
		{"hub.comes_off == wall", tell{"hub.comes_off == wall", "hub.comes_off is yes or no, wall is length (mm)", "two of a kind"}},
		{"hub.material == bush_material", tell{"hub.material == bush_material", "rows and ranges cannot be compared", "column"}},
		{"hub.comes_off ? hub.material : bush_material", tell{"hub.material", "is a row of materials", "numbers, words or yes and no"}},
	} {
		mustTell(t, c.source, told(c.source), c.want)
	}
}

// An absolute temperature is a point on a scale; K is a change.
func TestTemperatures(t *testing.T) {
	for source, want := range map[string]quantity.Dim{
		"duty.temperature - degC(20)":                       quantity.ChangeDim,
		"degC(20) + duty.temperature_rise":                  quantity.TemperatureDim,
		"duty.temperature_rise + degF(68)":                  quantity.TemperatureDim,
		"degC(20) - duty.temperature_rise":                  quantity.TemperatureDim,
		"degF(500.5)":                                       quantity.TemperatureDim,
		"1*K":                                               quantity.ChangeDim,
		"max(duty.temperature, hot)":                        quantity.TemperatureDim,
		"wall*(duty.temperature - degC(20))/(1*K)":          quantity.LengthDim,
		"hub_bore*bore_face.expansion*(hot - degC(20))":     quantity.LengthDim,
		"hub.comes_off ? duty.temperature : degC(-40)":      quantity.TemperatureDim,
		"degC(20) + tight/(hub_bore*bore_face.expansion)":   quantity.TemperatureDim,
		"degC(20) - tight/(shaft_size*bore_face.expansion)": quantity.TemperatureDim,
	} {
		if e := inferred(t, source); e.Type.Dim != want {
			t.Errorf("%s: got %v, want %v", source, e.Type.Dim, want)
		}
	}
	inferred(t, "hot <= shop.oven")
	for _, c := range []struct {
		source string
		want   tell
	}{
		{"2*duty.temperature", tell{"duty.temperature", "temperature on a scale", "(duty.temperature - degC(20))"}},
		{"duty.temperature/hot", tell{"duty.temperature", "temperature on a scale", "degC(20)"}},
		{"-hot", tell{"hot", "temperature on a scale", "degC(20)"}},
		{"abs(hot)", tell{"hot", "temperature on a scale", "degC(20)"}},
		{"hot**2", tell{"hot", "temperature on a scale", "degC(20)"}},
		{"duty.temperature + hot", tell{"duty.temperature + hot", "two temperatures on a scale are added", "change of temperature"}},
		{"duty.temperature >= 4*K", tell{"duty.temperature >= 4*K", "duty.temperature is temperature (degC), 4*K is change of temperature (K)", "degC(40)"}},
		{"4*K - hot", tell{"4*K - hot", "cannot be subtracted", "degC(40)"}},
		{"4*degC", tell{"degC", "degC is no factor", "degC(40)"}},
	} {
		got := told(c.source)
		if strings.Contains(c.source, "/hot") {
			mustTell(t, c.source, got, c.want, tell{"hot", "temperature on a scale", "degC(20)"})
			continue
		}
		mustTell(t, c.source, got, c.want)
	}
}

// Hardness is an order, not an amount, and its scales do not mix.
func TestHardness(t *testing.T) {
	inferred(t, "it.hardest >= hub.hardness")
	inferred(t, "max(it.hardest, hub.hardness) >= hub.hardness")
	mustTell(t, "hub.hardness >= shaft.hardness", told("hub.hardness >= shaft.hardness"),
		tell{"hub.hardness >= shaft.hardness", "hardness (HB), shaft.hardness is hardness (HRC)", "state both in one"})
	mustTell(t, "2*hub.hardness", told("2*hub.hardness"), tell{"hub.hardness", "can only be compared", "same scale"})
	mustTell(t, "hub.hardness + it.hardest", told("hub.hardness + it.hardest"), tell{"hub.hardness + it.hardest", "only be compared, not added", "compare"})
}

// A misspelt word must not read as never.
func TestWordsOfClosedLists(t *testing.T) {
	for _, source := range []string{
		`duty.shock == "heavy"`, `"heavy" == duty.shock`, `duty.shock != "none"`, `"none" != duty.shock`,
		`duty.shock in ["light", "heavy"]`, `duty.shock not in ["none"]`, `pair(shaft_face, bore_face) != "bad"`,
		`it.purpose == option.purpose`, `it.speed == duty.speed_band`, `(hub.comes_off ? duty.shock : "none") == "heavy"`,
		`(hub.comes_off ? "light" : duty.shock) == "heavy"`, `shock_factor("heavy")`,
	} {
		inferred(t, source)
	}
	for _, c := range []struct {
		source string
		want   tell
	}{
		{`duty.shock == "hevy"`, tell{`"hevy"`, `"hevy" is no word of duty.shock`, "did you mean heavy?"}},
		{`"hevy" != duty.shock`, tell{`"hevy"`, `"hevy" is no word of duty.shock`, "did you mean heavy?"}},
		{`duty.shock in ["none", "hevy"]`, tell{`"hevy"`, `"hevy" is no word of duty.shock`, "did you mean heavy?"}},
		{`duty.shock not in ["hevy"]`, tell{`"hevy"`, `"hevy" is no word of duty.shock`, "did you mean heavy?"}},
		{`duty.shock == "unheard"`, tell{`"unheard"`, `is no word of duty.shock`, "known here: none, light, heavy"}},
		{`pair(shaft_face, bore_face) == "badd"`, tell{`"badd"`, "no word of pair", "did you mean bad?"}},
		{`shock_factor("hevy")`, tell{`"hevy"`, "no word of duty.shock", "did you mean heavy?"}},
		{`duty.shock == heavy`, tell{"heavy", "heavy is a word of duty.shock without its quotes", `write "heavy"`}},
		{`heavy == duty.shock`, tell{"heavy", "heavy is a word of duty.shock without its quotes", `write "heavy"`}},
		{`hub.outside == "heavy"`, tell{"hub.outside", "hub.outside is length (mm), not a word", "own kind"}},
		{`hub.comes_off == "yes"`, tell{"hub.comes_off", "hub.comes_off is yes or no, not a word", "write hub.comes_off or not hub.comes_off"}},
		{`"heavy" == "light"`, tell{`"heavy" == "light"`, "two words are compared", "name what"}},
		{`wall + "heavy"`, tell{`"heavy"`, `the word "heavy" stands where none can be`, "== or in"}},
		{`wall in ["heavy"]`, tell{"wall", "wall is length (mm), not a word", "two limits"}},
		{`duty.shock == it.purpose`, tell{"duty.shock == it.purpose", "duty.shock and purpose have different words", "one list"}},
		{`hub.comes_off and yes`, tell{"yes", "yes is not written", "fact alone"}},
	} {
		mustTell(t, c.source, told(c.source), c.want)
	}
}

func TestNamesAndCalls(t *testing.T) {
	for _, c := range []struct {
		source string
		want   tell
	}{
		{"hub.outsid - wall", tell{"hub.outsid", "the name hub.outsid is unknown", "did you mean hub.outside?"}},
		{"hub_bor - wall", tell{"hub_bor", "the name hub_bor is unknown", "did you mean hub_bore?"}},
		{"4*tho", tell{"tho", "the name tho is unknown", "did you mean thou?"}},
		{"hub.material.e", tell{"hub.material.e", "hub.material is a row of materials, which has no column e", "did you mean E?"}},
		{"turn_off + wall", tell{"turn_off", "turn_off is a range", "low(turn_off) or high(turn_off)"}},
		{"low(wall)", tell{"low(wall)", "wall is one number, not a range", "write wall"}},
		{"low(2*wall)", tell{"2*wall", "low takes the name of a range", "numbers table"}},
		{"high(hub.comes_off)", tell{"high(hub.comes_off)", "is yes or no, not a range", "numbers table"}},
		{"low(turn_off, wall)", tell{"low(turn_off, wall)", "low takes one value, not 2", "low(x)"}},
		{"low(turn_of)", tell{"turn_of", "unknown", "did you mean turn_off?"}},
		{"min(wall)", tell{"min(wall)", "min of one value", "two or more"}},
		{"sqrt()", tell{"sqrt()", "sqrt takes one value, not 0", "sqrt(x)"}},
		{"rub_sped(wall, duty.rotation)", tell{"rub_sped", "the calculation rub_sped is unknown", "known here: min, max"}},
		{"sqt(seat_area)", tell{"sqt", "the calculation sqt is unknown", "did you mean sqrt?"}},
		{"rub_speed", tell{"rub_speed", "rub_speed is a calculation", "rub_speed(...)"}},
		{"wall(2)", tell{"wall", "wall is a value, not a calculation", "to multiply"}},
		{"rub_speed(wall)", tell{"rub_speed(wall)", "takes 2 values, not 1", "rub_speed(size, rotation)"}},
		{"rub_speed(duty.rotation, duty.rotation)", tell{"duty.rotation", "duty.rotation is speed of rotation (rpm), and size is length (mm)", "factor"}},
		{"rub_speed(0, duty.rotation)", tell{"0", "0 is a plain number, and size is length (mm)", "write 0*mm"}},
		{`pair(shaft_face, filler) == "bad"`, tell{"filler", "filler is a row of fillers, and argument 2 is a row of materials", "name a row"}},
		{`pair(shaft_face, wall) == "bad"`, tell{"wall", "wall is length (mm), and argument 2 is a row of materials", "name a row"}},
	} {
		mustTell(t, c.source, told(c.source), c.want)
	}
}

// One run tells all: forms, names, units and words of one expression.
func TestAllFaultsInOneRun(t *testing.T) {
	source := `hub.outsid*3 + wall >= force and duty.shock == "hevy" && left_to_bore > wall`
	mustTell(t, source, told(source),
		tell{"hub.outsid", "unknown", "did you mean hub.outside?"},
		tell{"3", "the number 3", "numbers table"},
		tell{`"hevy"`, "no word", "did you mean heavy?"},
		tell{"&&", "&& is not used", "write and"},
		tell{"left_to_bore", "is a range", "low(left_to_bore)"},
	)
}

func TestWhatAPlaceWants(t *testing.T) {
	for _, c := range []struct {
		source string
		want   Type
		fault  *tell
	}{
		{"wall + coat", length, nil},
		{"force", length, &tell{"force", "force is force (N), and length (mm) is wanted here", "factor left out"}},
		{"0", length, &tell{"0", "0 is a plain number, and length (mm) is wanted", "write 0*mm"}},
		{"1/2", number, nil},
		{"wall", fact, &tell{"wall", "wall is length (mm), and yes or no is wanted", "compare it"}},
		{"hub.comes_off", number, &tell{"hub.comes_off", "is yes or no, and a plain number is wanted", "write a number"}},
		{`hub.comes_off ? "heavy" : "none"`, Type{Kind: Word, Words: shockWords}, nil},
		{`hub.comes_off ? "heavy" : "non"`, Type{Kind: Word, Words: shockWords}, &tell{`"non"`, "no word of duty.shock", "did you mean none?"}},
		{`"heavy"`, Type{Kind: Word, Words: shockWords}, nil},
		{"hub.material", Type{Kind: Row, Table: "materials"}, nil},
		{"hub.material", Type{Kind: Row, Table: "fillers"}, &tell{"hub.material", "is a row of materials, and a row of fillers is wanted", "name a row"}},
	} {
		s, faults := Parse(text(c.source))
		e, more := s.Check(bench(), c.want)
		faults = append(faults, more...)
		if c.fault != nil {
			mustTell(t, c.source, faults, *c.fault)
		} else {
			mustTell(t, c.source, faults)
		}
		if (e == nil) != (c.fault != nil) {
			t.Errorf("%s: expression %v beside faults %v", c.source, e, faults)
		}
	}
}

// Places follow the text over lines, in characters and not in bytes.
func TestPlaces(t *testing.T) {
	got := told("wall +\n  hub.outsid")
	if len(got) != 1 || got[0].At.Line != 8 || got[0].At.Column != 22 || got[0].At.Width != 10 {
		t.Errorf("second line: %v", got)
	}
	source := `duty.shock == "schön" and hub.outsid > wall`
	mustTell(t, source, told(source), tell{`"schön"`, "no word", "known here"}, tell{"hub.outsid", "unknown", "hub.outside"})
	if got, want := told("hub.outsid")[0].Error(), "hub/bush.yaml:7:20: define.wall.is: the name hub.outsid is unknown here; did you mean hub.outside?"; got != want {
		t.Errorf("got %s\nwant %s", got, want)
	}
	e := inferred(t, "2*(wall + coat)")
	if e.At.Column != 20 || e.At.Width != 15 || e.Args[1].At.Column != 23 || e.Args[1].At.Width != 11 {
		t.Errorf("whole %v, sum %v", e.At, e.Args[1].At)
	}
}
