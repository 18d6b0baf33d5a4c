package strength_test

import (
	"errors"
	"math"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/kernel/kerneltest"
	q "wornfit/calc/quantity"
	"wornfit/calc/strength"
)

// At the stated end of a range there is no note, a little beyond there is one;
// at the end of what is answered there is a number, a little beyond a refusal.
func TestRangesEndWhereTheySay(t *testing.T) {
	type call = func(x float64) (float64, []basis.Note, error)
	keyed := func(w, h float64) (float64, []basis.Note, error) {
		return strength.KeywayStrengthLeft(strength.Keyway{Diameter: 1, Width: q.Length(w), Depth: q.Length(h)})
	}
	seat := func(of func(q.Stress) (strength.EdgeFactors, []basis.Note, error)) call {
		return func(x float64) (float64, []basis.Note, error) {
			f, notes, err := of(q.Stress(x))
			return f.Bending, notes, err
		}
	}
	for _, c := range []struct {
		what       string
		of         call
		end, after float64
		refused    bool
	}{
		{"shallow groove", func(x float64) (float64, []basis.Note, error) { return strength.GrooveBending(groove(1.1, x)) }, 0.25, 0.249, false},
		{"sharp groove", func(x float64) (float64, []basis.Note, error) { return strength.GrooveTwisting(groove(1.1, x)) }, 50, 50.1, false},
		{"deep groove", func(x float64) (float64, []basis.Note, error) { return strength.GrooveBending(groove(x, 4)) }, 2, 2.01, false},
		{"groove nearly through", func(x float64) (float64, []basis.Note, error) {
			return strength.GrooveBending(strength.Groove{Outside: 1, Depth: q.Length(x), Radius: 0.1})
		}, 0.45, 0.451, true},
		{"soft steel", func(x float64) (float64, []basis.Note, error) { return strength.NotchSensitivity(q.Stress(x), 1e-3) }, 345e6, 344e6, false},
		{"hard steel", func(x float64) (float64, []basis.Note, error) { return strength.NotchSensitivity(q.Stress(x), 1e-3) }, 1.7e9, 1.701e9, true},
		{"hard steel twisted", func(x float64) (float64, []basis.Note, error) {
			return strength.NotchSensitivityTwisting(q.Stress(x), 1e-3)
		}, 1.5e9, 1.501e9, true},
		{"soft surface", func(x float64) (float64, []basis.Note, error) {
			return strength.SurfaceFactor(strength.HotRolled, q.Stress(x))
		}, 340e6, 339e6, false},
		{"hard surface", func(x float64) (float64, []basis.Note, error) {
			return strength.SurfaceFactor(strength.HotRolled, q.Stress(x))
		}, 1.7e9, 1.701e9, false},
		{"thick shaft", func(x float64) (float64, []basis.Note, error) { return strength.SizeFactor(q.Length(x)) }, 0.254, 0.255, false},
		{"pressed, soft", seat(strength.PressedEdge), 400e6, 399e6, false},
		{"keyed, hard", seat(strength.KeyedHub), 1.2e9, 1.201e9, false},
		{"wide keyway", func(x float64) (float64, []basis.Note, error) { return keyed(x, 0.1) }, 0.5, 0.501, true},
		{"deep keyway", func(x float64) (float64, []basis.Note, error) { return keyed(0.25, x) }, 0.1875, 0.188, false},
		{"too deep a keyway", func(x float64) (float64, []basis.Note, error) { return keyed(0.25, x) }, 0.25, 0.251, true},
	} {
		_, notes, err := c.of(c.end)
		kerneltest.Fine(t, err)
		if !c.refused && len(notes) > 0 {
			t.Errorf("%s at its end %v: notes %v, want none", c.what, c.end, notes)
		}
		_, notes, err = c.of(c.after)
		var refusal *basis.Refusal
		if c.refused != errors.As(err, &refusal) || !c.refused && len(notes) != 1 {
			t.Errorf("%s beyond its end, %v: notes %v, %v; refused must be %v", c.what, c.after, notes, err, c.refused)
		}
	}
}

// The coefficients typed a second time and worked apart from this program: guards
// the typing, not the charts.
func TestGroovesAsListed(t *testing.T) {
	for _, c := range []struct{ k, x, bending, twisting float64 }{
		{1.05, 4, 4.293552, 2.740989},
		{1.2, 9, 4.551889, 2.891208},
		{1.6, 25, 4.627566, 2.994404},
		{2, 50, 5.145039, 3.354950},
		{1.02, 0.25, 1.863588, 1.449664},
		{1.3, 1.9, 2.166689, 1.622137},
	} {
		got := must(strength.GrooveBending(groove(c.k, c.x)))
		kerneltest.Near(t, "bending", got, c.bending, 1e-5)
		got = must(strength.GrooveTwisting(groove(c.k, c.x)))
		kerneltest.Near(t, "twisting", got, c.twisting, 1e-5)
	}
}

// The figures as the books print them in kpsi, from memory, beside the metric
// ones in use.
func TestFinishesByTheirOtherPrint(t *testing.T) {
	const kpsi = 6.894757e6
	for f, p := range map[strength.Finish][2]float64{
		strength.Ground: {1.34, -0.085}, strength.Machined: {2.70, -0.265}, strength.HotRolled: {14.4, -0.718}, strength.Forged: {39.9, -0.995},
	} {
		for _, s := range []float64{80, 120, 200} {
			want := p[0] * math.Pow(s, p[1])
			kerneltest.Near(t, string(f), must(strength.SurfaceFactor(f, q.Stress(s*kpsi))), want, 4e-3) // three printed places
		}
	}
	// Shear alone: Shigley's 0.59 is von Mises' 1/√3, rounded up by tests.
	between(t, "load factor of torsion", strength.TwistingLoad*math.Sqrt(3), 1, 1.04)
}

// The two printed tables of keyways, from memory: Kf of Juvinall, Kt of Shigley.
func TestKeywayTablesAsPrinted(t *testing.T) {
	for _, c := range []struct {
		cut                        strength.KeywayCut
		tensile                    q.Stress
		bend, bendMost, twist, all float64
	}{
		{strength.EndMilled, 500e6, 1.6, 2.14, 1.3, 3.0}, {strength.EndMilled, 690e6, 2.0, 2.14, 1.6, 3.0},
		{strength.SledRunner, 689e6, 1.3, 1.7, 1.3, 3.0}, {strength.SledRunner, 900e6, 1.6, 1.7, 1.6, 3.0},
	} {
		f, _, err := strength.KeywayFatigue(c.cut, c.tensile)
		kerneltest.Fine(t, err)
		if f.Bending.Lo != c.bend || f.Bending.Hi != c.bendMost || f.Twisting.Lo != c.twist || f.Twisting.Hi != c.all {
			t.Errorf("%s at %g: %v, want %v", c.cut, c.tensile, f, c)
		}
	}
	// A pressed edge that carries: Kf 2.2 to 4 is what the treatment's part says.
	row, _, err := strength.TreatmentFor("pressed-edge")
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "Kf 4", 1/row.Kept.Lo, 4, 0.01)
	kerneltest.Near(t, "Kf 2.2", 1/row.Kept.Hi, 2.2, 0.02)
}
