package assembly_test

import (
	"fmt"
	"testing"

	"wornfit/calc/assembly"
	"wornfit/calc/kernel/kerneltest"
	q "wornfit/calc/quantity"
)

var plug = assembly.GoGauge{Shaft: 0.025, Gap: 25e-6, HubExpands: 11.7e-6, Shafts: 9.9e-6, Plugs: 11.5e-6}

// The second route: the hub at the temperature HubTemperature asks for has a bore
// of the plug's size.
func TestThePlugIsTheHotBore(t *testing.T) {
	e := assembly.Entry{Seat: 0.025, Interference: 40e-6, Hub: 11.7e-6, Shaft: 9.9e-6, Room: 293.15}
	for _, cold := range []q.TemperatureChange{0, -98} {
		hot, _, err := assembly.HubTemperature(e, 25e-6, e.Room+q.Temperature(cold))
		kerneltest.Fine(t, err)
		bore := (float64(e.Seat)) * (1 + 11.7e-6*float64(hot-e.Room))
		g := plug
		g.Shaft, g.ShaftWarmer = e.Seat+e.Interference, cold
		got, _, err := assembly.HotGoGauge(g)
		kerneltest.Fine(t, err)
		// HubTemperature expands the joint's size where the plug expands the shaft's: 40 µm in 25 mm of 24 µm.
		kerneltest.Near(t, "plug", float64(got), bore, 2e-6)
	}
}

func TestWarmthOfThePlugAndOfTheWay(t *testing.T) {
	if got, notes, err := assembly.HotGoGauge(assembly.GoGauge{Shaft: 0.025}); err != nil || len(notes) != 0 || got != 0.025 {
		t.Errorf("nothing wanted and nothing warm gives %v, %v, %v; want the shaft's size", got, notes, err)
	}
	base, _, err := assembly.HotGoGauge(plug)
	kerneltest.Fine(t, err)
	warm, slow := plug, plug
	warm.PlugWarmer, slow.Lost = 10, 10
	small, _, err := assembly.HotGoGauge(warm)
	kerneltest.Fine(t, err)
	large, _, err := assembly.HotGoGauge(slow)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "10 K of the plug", float64(base-small), 10*11.5e-6*0.025, 2e-3)
	kerneltest.Near(t, "10 K of the way", float64(large-base), 10*11.7e-6*0.025, 1e-6)
	frozen := plug
	frozen.ShaftWarmer = -215
	if got, notes, err := assembly.HotGoGauge(frozen); err != nil || got >= plug.Shaft || len(notes) != 1 {
		t.Errorf("for a frozen shaft %v, %v, %v; want a smaller plug and a note", got, notes, err)
	}
}

func TestGoGaugeRefusals(t *testing.T) {
	for _, c := range []struct {
		blame string
		spoil func(g *assembly.GoGauge)
	}{
		{"shaft", func(g *assembly.GoGauge) { g.Shaft = 0 }},
		{"clearance wanted", func(g *assembly.GoGauge) { g.Gap = -1e-6 }},
		{"heat lost on the way", func(g *assembly.GoGauge) { g.Lost = -1 }},
		{"expansion of the hub", func(g *assembly.GoGauge) { g.HubExpands = 1 }},
		{"expansion of the plug", func(g *assembly.GoGauge) { g.Plugs = -1e-6 }},
		{"warmth of the shaft above room", func(g *assembly.GoGauge) { g.ShaftWarmer = 3000 }},
	} {
		g := plug
		c.spoil(&g)
		_, _, err := assembly.HotGoGauge(g)
		kerneltest.Blames(t, c.blame, err, c.blame)
	}
}

func ExampleHotGoGauge() {
	// A shaft of 25.040 to go in with 0.025 to spare; the hub cools 10 degrees on
	// the way and the plug warms by 10 as it is tried.
	got, _, err := assembly.HotGoGauge(assembly.GoGauge{
		Shaft: 0.02504, Gap: 25e-6, Lost: 10, HubExpands: 11.7e-6, Plugs: 11.5e-6, PlugWarmer: 10,
	})
	fmt.Printf("%.3f mm %v\n", 1e3*got, err)
	// Output: 25.065 mm <nil>
}
