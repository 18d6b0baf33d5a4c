package condition

import (
	"math"
	"testing"

	"wornfit/advisor/casefile"
	"wornfit/calc/interval"
)

// bench builds a case the way a fitter would state it, without a file.
type bench struct {
	hub, shaft *casefile.Part
	fit        *casefile.Fit
	c          *casefile.Case
}

const (
	mm  = 1e-3
	deg = math.Pi / 180
)

func newBench() *bench {
	b := &bench{
		hub:   &casefile.Part{ID: "eye", Called: "eye", Is: casefile.Hub, Materials: []string{"steel"}, Given: casefile.Givens{}},
		shaft: &casefile.Part{ID: "pin", Called: "pin", Is: casefile.Shaft, Materials: []string{"steel"}, Given: casefile.Givens{}},
	}
	b.fit = &casefile.Fit{ID: "pivot", Hub: b.hub, Shaft: b.shaft, Purpose: "oscillating", Given: casefile.Givens{},
		Surfaces: map[casefile.Side]*casefile.Surface{casefile.Hub: {Seen: map[string]string{}}, casefile.Shaft: {Seen: map[string]string{}}}}
	b.c = &casefile.Case{Fits: []*casefile.Fit{b.fit}, Duty: casefile.Givens{}}
	return b
}

func is(si float64) casefile.Value {
	return casefile.Value{Stated: true, Known: true, Lo: si, Hi: si}
}

// gauge is good to ± within mm and repeats to ± again mm; 0: not stated.
func gauge(within, again float64) *casefile.Gauge {
	g := &casefile.Gauge{ID: "g", Called: "gauge", Within: is(within * mm)}
	if again > 0 {
		g.Repeats = is(again * mm)
	}
	return g
}

// at20 is a reading at 20 °C: station mm, angle degrees, sizes mm.
func at20(g *casefile.Gauge, at, toward float64, sizes ...float64) casefile.Reading {
	r := casefile.Reading{At: is(at * mm), Toward: is(toward * deg), Gauge: g, PartAt: is(293.15), GaugeAt: is(293.15)}
	for _, s := range sizes {
		r.Sizes = append(r.Sizes, is(s*mm))
	}
	return r
}

func (b *bench) on(s casefile.Side) *casefile.Surface { return b.fit.Surfaces[s] }

// round says that no lobes were found.
func (b *bench) round() *bench {
	for _, s := range casefile.Sides {
		b.on(s).Lobes = is(0)
	}
	return b
}

func (b *bench) find(t *testing.T) *Condition {
	t.Helper()
	c, solve := Find(b.c, b.fit, steel)
	if len(solve) > 0 {
		t.Fatalf("told to solve: %v", solve)
	}
	return c
}

func steel(string) (interval.I, bool) { return interval.Point(11.5e-6), true }

// near holds a figure in metres to one in mm.
func check(t *testing.T, what string, got, wantMM, withinMM float64) {
	t.Helper()
	if !(math.Abs(got/mm-wantMM) <= withinMM) {
		t.Errorf("%s is %.5f mm, want %.5f mm within %.5f", what, got/mm, wantMM, withinMM)
	}
}
