package assembly_test

import (
	"strings"
	"testing"

	"wornfit/calc/assembly"
	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// A steel seat of 50 mm and 11.7 µm per m and K: each 100 K gives 58.5 µm.
func TestHeatAndColdThatAreNotOrdinaryAreSaid(t *testing.T) {
	e := assembly.Entry{Seat: 0.050, Hub: 11.7e-6, Shaft: 9.9e-6, Room: 293.15}
	for _, c := range []struct {
		tight q.Length
		cold  bool
		says  string // "" is nothing to say
	}{
		{90e-6, false, ""},        // 154 K: a kitchen oven
		{120e-6, false, "temper"}, // 205 K, 225 °C
		{300e-6, false, "scale"},  // 513 K, 533 °C
		{40e-6, true, ""},         // 81 K, -61 °C
		{60e-6, true, "dry ice"},  // 121 K, -101 °C
		{120e-6, true, "heat the hub as well"},
	} {
		e.Interference = c.tight
		var notes []basis.Note
		var err error
		if c.cold {
			_, notes, err = assembly.ShaftTemperature(e, 0)
		} else {
			_, notes, err = assembly.HubTemperature(e, 0, e.Room)
		}
		switch {
		case err != nil:
			t.Errorf("%v: %v", c.tight, err)
		case c.says == "" && len(notes) > 0:
			t.Errorf("%v: %v, want nothing said", c.tight, notes)
		case c.says != "" && (len(notes) != 1 || !strings.Contains(notes[0].Says, c.says)):
			t.Errorf("%v: %v, want %q", c.tight, notes, c.says)
		}
	}
}
