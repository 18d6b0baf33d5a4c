package advisor_test

import (
	"slices"
	"strings"
	"testing"

	"wornfit/advisor/answer"
)

// Nobody says how heavily the bearing is loaded: 2.2 kN on a rating of 41 kN (6308,
// from memory of bearing lists) is usual, and usual it is taken to be, aloud. A load
// that is stated is neither taken nor asked for.
func TestAnUnstatedBearingLoadIsTakenAsUsualAloud(t *testing.T) {
	b := base(t)
	text := shipped(t, "countershaft-seat")
	for _, c := range []struct{ says, seat, asks string }{
		{"", "inner-turns-normal-middle", "taken as normal"},
		{"  bearing_load: light\n", "inner-turns-light-middle", ""},
		{"  bearing_load: heavy\n", "inner-turns-heavy-middle", ""},
	} {
		a := advise(t, b, swap(t, text, "duty:\n", "duty:\n"+c.says))
		o := a.Options[slices.IndexFunc(a.Options, func(o answer.Option) bool { return open(o.Verdict) })]
		if got := o.Picks["purpose/bearing-seat.seat"]; got != c.seat {
			t.Errorf("%q: seat %s, want %s", c.says, got, c.seat)
		}
		at := slices.IndexFunc(o.Missing, func(m answer.Missing) bool { return m.Name == "duty.bearing_load" })
		if (at >= 0) != (c.asks != "") || at >= 0 && !strings.Contains(o.Missing[at].Ask, c.asks) {
			t.Errorf("%q: asks %+v, want %q", c.says, o.Missing, c.asks)
		}
	}
}

// An outer ring that stands to its load sits alike whatever the load: it is not asked.
func TestALoadThatChangesNoSeatIsNotAsked(t *testing.T) {
	a := advise(t, base(t), shipped(t, "floating-seat"))
	o := a.Options[0]
	if o.Picks["purpose/bearing-seat.seat"] != "outer-stands" {
		t.Fatalf("picked %v", o.Picks)
	}
	for _, m := range o.Missing {
		if m.Name == "duty.bearing_load" {
			t.Errorf("asks %q", m.Ask)
		}
	}
}
