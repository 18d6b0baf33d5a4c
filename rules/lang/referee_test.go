package lang

import (
	"errors"
	"math"
	"testing"
)

func judged(t *testing.T, source string, values map[string]any) (any, error) {
	t.Helper()
	s, faults := Parse(text(source))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	j, err := s.Referee(bench())
	if err != nil {
		t.Fatal(err)
	}
	return j.Run(values)
}

// Values anyone can reckon by hand.
func TestTheJudgeReckonsAsByHand(t *testing.T) {
	values := map[string]any{
		"wall": 0.003, "coat": 0.0, "hub.outside": 0.05, "seat_area": 0.0009, "duty.temperature": 293.15,
		"low(turn_off)": 0.001, "high(turn_off)": 0.004, "duty.shock": "heavy", "hub.comes_off": true,
		"shaft_face.family": 1.0, "bore_face.family": 1.0, "duty.rotation": 2.0,
	}
	for _, c := range []struct {
		source string
		want   any
	}{
		{"-wall**2", -9e-6}, // the sign after the square
		{"sqrt(seat_area)", 0.03},
		{"high(turn_off) - low(turn_off)", 0.003},
		{"degC(20)", 293.15},
		{"degF(68)", 293.15},  // 68 °F is 20 °C
		{"degF(-40)", 233.15}, // where the scales meet
		{"degC(-40)", 233.15},
		{"duty.temperature - degC(20)", 0.0},
		{"1*inch", 0.0254},
		{"wall >= 4*mm", false},
		{`duty.shock in ["light", "heavy"]`, true},
		{`duty.shock not in ["light", "heavy"]`, false},
		{`"none" == duty.shock`, false},
		{"not hub.comes_off", false},
		{"hub.comes_off ? 1*mm : wall", 0.001},
		{"max(0*mm, wall, hub.outside)", 0.05},
		{"min(1, 2)", 1.0},
		{"4", 4.0},
		{`pair(shaft_face, bore_face) == "bad"`, true},
		{"rub_speed(hub.outside, duty.rotation)", math.Pi * 0.05 * 2},
		{"shock_factor(duty.shock)", 3.0},
		{`shock_factor("light")`, 2.0},
	} {
		got, err := judged(t, c.source, values)
		if err != nil {
			t.Errorf("%s: %v", c.source, err)
			continue
		}
		want, number := c.want.(float64)
		if f, ok := got.(float64); number && (!ok || math.Abs(f-want) > 1e-12*math.Max(1, math.Abs(want))) || !number && got != c.want {
			t.Errorf("%s = %v, want %v", c.source, got, c.want)
		}
	}
}

// expr alone says that x/0 > 2 is true; here it decides nothing.
func TestWhatIsNotFiniteDecidesNothing(t *testing.T) {
	values := map[string]any{"wall": 0.003, "coat": 0.0, "seat_area": -1.0, "act_ratio": math.NaN(), "grip_margin": 1e300}
	for _, source := range []string{
		"wall/coat > 2", "wall/coat < 2", "wall/coat", "coat/coat > 2", "2/(wall/coat) <= 4", "sqrt(seat_area) <= wall",
		"max(wall/coat, 1) > 2", "act_ratio > 2", "grip_margin**2 > 2", "grip_margin*grip_margin > 2", "grip_margin*grip_margin >= 2",
		"1 < grip_margin*grip_margin", "grip_margin*grip_margin <= 2", "grip_margin*grip_margin",
	} {
		if got, err := judged(t, source, values); !errors.Is(err, ErrUndecided) {
			t.Errorf("%s = %v, %v", source, got, err)
		}
	}
	for source, want := range map[string]any{
		"coat > 0*mm and wall/coat > 2": false, // the guard is asked first
		"coat <= 0*mm or wall/coat > 2": true,
		"coat > 0*mm ? wall/coat : 4":   4.0,
	} {
		if got, err := judged(t, source, values); got != want || err != nil {
			t.Errorf("%s = %v, %v, want %v", source, got, err, want)
		}
	}
}

func TestTheJudgeRefuses(t *testing.T) {
	s, _ := Parse(text("wall + hub.outsid"))
	if _, err := s.Referee(bench()); err == nil {
		t.Error("an unknown name was compiled")
	}
	s, _ = Parse(text("wall + 3*mm"))
	if _, err := s.Referee(bench()); err == nil {
		t.Error("a number in an expression was compiled")
	}
	if _, err := judged(t, "wall + coat", map[string]any{"wall": 0.003}); err == nil || err.Error() != "no value for coat" {
		t.Errorf("a missing value: %v", err)
	}
}

func TestTheJudgeNamesWhatItNeeds(t *testing.T) {
	s, _ := Parse(text(`pair(shaft_face, bush_material) == "bad" and wall + low(turn_off) > wall + high(turn_off)`))
	j, err := s.Referee(bench())
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]bool{}
	j.Names(func(n string, _ Type) { got[n] = true })
	for _, n := range []string{"shaft_face.family", "bush_material.family", "wall", "low(turn_off)", "high(turn_off)"} {
		if !got[n] {
			t.Errorf("%s is not named", n)
		}
	}
	if len(got) != 5 {
		t.Errorf("named %v", got)
	}
}

// A word at the top takes its list from the type wanted.
func TestTheJudgeOfAWord(t *testing.T) {
	s, _ := Parse(text(`hub.comes_off ? "heavy" : "none"`))
	j, err := s.RefereeAs(bench(), Type{Kind: Word, Words: shockWords})
	if err != nil {
		t.Fatal(err)
	}
	if got, err := j.Run(map[string]any{"hub.comes_off": false}); got != "none" || err != nil {
		t.Errorf("got %v, %v", got, err)
	}
}
