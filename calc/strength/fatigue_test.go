package strength_test

import (
	"fmt"
	"math"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
	"wornfit/calc/strength"
)

// The whole chain of Shigley's first shaft example: sensitivities, limit, all
// four safeties. Kt and Kts are the book's chart readings; the print rounds Kfs
// to 1.37 before the safeties, which its tolerances allow.
func TestShaftOfTheBookInFatigue(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "D01")
	tensile, yield := q.Stress(r.In(t, "Sut")), q.Stress(r.In(t, "Sy"))
	d, radius := q.Length(r.In(t, "d")), q.Length(r.In(t, "r"))
	sensitivity := must(strength.NotchSensitivity(tensile, radius))
	between(t, "q", sensitivity/r.In(t, "q"), 0.99, 1.01) // printed to two places
	twisting := must(strength.NotchSensitivityTwisting(tensile, radius))
	between(t, "qs", twisting/r.In(t, "qs"), 0.99, 1.01)
	kf, err := strength.FatigueFactor(r.In(t, "Kt"), sensitivity)
	kerneltest.Fine(t, err)
	r.Want(t, "Kf", kf)
	kfs, err := strength.FatigueFactor(r.In(t, "Kts"), twisting)
	kerneltest.Fine(t, err)
	r.Want(t, "Kfs", kfs)
	reliable, err := strength.ReliabilityFactor(0.99)
	kerneltest.Fine(t, err)
	limit, err := strength.EnduranceLimit(tensile, strength.Factors{
		Surface: must(strength.SurfaceFactor(strength.Machined, tensile)), Size: must(strength.SizeFactor(d)),
		Load: strength.BendingLoad, Reliability: reliable, Kept: 1,
	})
	kerneltest.Fine(t, err)
	r.Want(t, "Se", float64(limit))

	bend, err := strength.Bending(strength.Section{Outside: d}, q.Torque(r.In(t, "M_reversed")))
	kerneltest.Fine(t, err)
	twist, err := strength.Twisting(strength.Section{Outside: d}, q.Torque(r.In(t, "T_steady")))
	kerneltest.Fine(t, err)
	bending, shear := strength.Swing{Amplitude: q.Stress(kf) * bend}, strength.Swing{Mean: q.Stress(kfs) * twist}
	swing, err := strength.VonMisesSwing(bending, shear)
	kerneltest.Fine(t, err)
	n, err := strength.GoodmanSafety(swing, limit, tensile)
	kerneltest.Fine(t, err)
	r.Want(t, "n_goodman", n)
	n, err = strength.SoderbergSafety(swing, limit, yield)
	kerneltest.Fine(t, err)
	r.Want(t, "n_soderberg", n)
	n, err = strength.GerberSafety(swing, limit, tensile)
	kerneltest.Fine(t, err)
	r.Want(t, "n_gerber", n)
	n, err = strength.YieldSafety(bending, shear, yield)
	kerneltest.Fine(t, err)
	r.Want(t, "n_yield", n)
}

func TestGoodmanAgreesWithTheBooks(t *testing.T) {
	rows := outside.Read(t, "worked.json")
	// The strength that gives the book's safety; all stresses scale, so one call tells it.
	r := outside.Get(t, rows, "D04")
	n, err := strength.GoodmanSafety(strength.Between(q.Stress(r.In(t, "smin")), q.Stress(r.In(t, "smax"))), q.Stress(r.In(t, "Se_over_Sut")*1e9), 1e9)
	kerneltest.Fine(t, err)
	r.Want(t, "Sut", 1e9*r.In(t, "n")/n)

	// Two pulls x and y at right angles are worth √(x² + y² − x·y), the same as a
	// pull of their mean with a shear of half their difference.
	r = outside.Get(t, rows, "D05")
	x := strength.Between(q.Stress(r.In(t, "sx_low")), q.Stress(r.In(t, "sx_high")))
	y := strength.Between(q.Stress(r.In(t, "sy_low")), q.Stress(r.In(t, "sy_high")))
	swing, err := strength.VonMisesSwing(
		strength.Swing{Amplitude: (x.Amplitude + y.Amplitude) / 2, Mean: (x.Mean + y.Mean) / 2},
		strength.Swing{Amplitude: (x.Amplitude - y.Amplitude) / 2, Mean: (x.Mean - y.Mean) / 2})
	kerneltest.Fine(t, err)
	n, err = strength.GoodmanSafety(swing, q.Stress(r.In(t, "Se")), q.Stress(r.In(t, "Sut")))
	kerneltest.Fine(t, err)
	r.Want(t, "n", n)

	r = outside.Get(t, outside.Read(t, "fatigue.json"), "D14")
	r.Want(t, "d", diameterFor(t, r, swung(t, r, 1, 1), q.Stress(r.In(t, "Se")), q.Stress(r.In(t, "Sut"))))
}

// Soderberg is σa/Se + σm/Sy. The book weighs the amplitude with Su/Se against
// Sy, which is a limit of Se·Sy/Su: with that limit its 34 mm come out, with the
// true one 32 mm. The row is met only as the book reckons.
func TestSoderbergAsTheBookMixesIt(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "D06")
	swing := swung(t, r, r.In(t, "Kb"), r.In(t, "Ks"))
	limit, yield := q.Stress(r.In(t, "Se")), q.Stress(r.In(t, "Sy"))
	mixed := limit * yield / q.Stress(r.In(t, "Su"))
	r.Want(t, "d", diameterFor(t, r, swing, mixed, yield))
	r.WantWithin(t, "d", diameterFor(t, r, swing, limit, yield), 0.93, 0.96)
}

// The row states no limit; 0.4 of the tensile strength gives the book's 34.81 mm
// to a hundredth when amplitude and mean are joined before von Mises, and 34.85,
// still within the print, when after, as here: so this row proves the form, not
// the limit.
func TestSoderbergAgreesWithTheBook(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "D07")
	const unstated = 0.4 // of Sut
	r.Want(t, "d", diameterFor(t, r, swung(t, r, r.In(t, "Kf"), r.In(t, "Kf")), q.Stress(unstated*r.In(t, "Sut")), q.Stress(r.In(t, "Syt"))))
}

// The book takes the notch off the limit instead of putting it on the stress,
// and has 0.577 for torsion.
func TestEnduranceLimitAgreesWithTheBook(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "D09")
	reliable, err := strength.ReliabilityFactor(0.95)
	kerneltest.Fine(t, err)
	between(t, "reliability factor", reliable/r.In(t, "kc"), 0.999, 1.001)
	limit, err := strength.EnduranceLimit(q.Stress(r.In(t, "Sut")), strength.Factors{
		Surface: r.In(t, "ka"), Size: r.In(t, "kb"), Reliability: reliable, Load: r.In(t, "ke"), Kept: 1,
	})
	kerneltest.Fine(t, err)
	kf, err := strength.FatigueFactor(r.In(t, "Kt"), r.In(t, "q"))
	kerneltest.Fine(t, err)
	r.Want(t, "Se", float64(limit)/kf)
}

// Torque alone, amplitude alone, with the machined surface by its equation.
func TestMachinedShaftUnderSwingingTorque(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "fatigue.json"), "D15")
	tensile := q.Stress(r.In(t, "Sut"))
	reliable, err := strength.ReliabilityFactor(r.In(t, "reliability"))
	kerneltest.Fine(t, err)
	limit, err := strength.EnduranceLimit(tensile, strength.Factors{
		Surface: must(strength.SurfaceFactor(strength.Machined, tensile)), Size: r.In(t, "kb"), Load: 1, Reliability: reliable, Kept: 1,
	})
	kerneltest.Fine(t, err)
	torque := strength.Between(q.Stress(r.In(t, "T_low")), q.Stress(r.In(t, "T_high")))
	atOne, err := strength.Twisting(strength.Section{Outside: 0.03}, q.Torque(torque.Amplitude))
	kerneltest.Fine(t, err)
	swing, err := strength.VonMisesSwing(strength.Swing{}, strength.Swing{Amplitude: atOne})
	kerneltest.Fine(t, err)
	r.Want(t, "d", diameterFor(t, r, swing, limit, tensile))
}

// swung is the von Mises swing of a row's bending and torque on a 30 mm shaft,
// the factors on the amplitudes only.
func swung(t *testing.T, r outside.Row, kb, ks float64) strength.Swing {
	t.Helper()
	const d = 0.03
	at := func(name string) q.Stress {
		σ, err := strength.Bending(strength.Section{Outside: d}, q.Torque(r.In(t, name)))
		kerneltest.Fine(t, err)
		return σ
	}
	bending := strength.Between(at("M_low"), at("M_high"))
	shear := strength.Between(at("T_low")/2, at("T_high")/2)
	bending.Amplitude *= q.Stress(kb)
	shear.Amplitude *= q.Stress(ks)
	swing, err := strength.VonMisesSwing(bending, shear)
	kerneltest.Fine(t, err)
	return swing
}

// diameterFor is the diameter with the row's safety n: a swing worked on 30 mm
// falls with the cube.
func diameterFor(t *testing.T, r outside.Row, swing strength.Swing, limit, strong q.Stress) float64 {
	t.Helper()
	n, err := strength.GoodmanSafety(swing, limit, strong) // the line is Soderberg's when strong yields
	kerneltest.Fine(t, err)
	soderberg, err := strength.SoderbergSafety(swing, limit, strong)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "one line through two strengths", soderberg, n, 1e-15)
	return 0.03 * math.Cbrt(r.In(t, "n")/n)
}

// must is for calls whose notes do not matter here.
func must(v float64, _ []basis.Note, err error) float64 {
	if err != nil {
		panic(err)
	}
	return v
}

// The printed tables of Shigley's reliability factors and of the size factor's
// two branches at 2 in, from memory.
func TestFactorsAtTheirPrintedPlaces(t *testing.T) {
	for reliability, want := range map[float64]float64{0.5: 1, 0.9: 0.897, 0.95: 0.868, 0.99: 0.814, 0.999: 0.753, 0.9999: 0.702, 0.99999: 0.659, 0.999999: 0.620} {
		got, err := strength.ReliabilityFactor(reliability)
		kerneltest.Fine(t, err)
		if math.Abs(got-want) > 0.0006 { // the table's last place and its rounded 0.08·z
			t.Errorf("reliability %v: %v, want %v", reliability, got, want)
		}
	}
	kerneltest.Near(t, "size factor at 2 in", must(strength.SizeFactor(0.0508)), 0.816, 1e-3)
	kerneltest.Near(t, "size factor, metric print 1.51·d^−0.157", must(strength.SizeFactor(0.1)), 1.51*math.Pow(100, -0.157), 2e-3)
	kerneltest.Near(t, "size factor, metric print 1.24·d^−0.107", must(strength.SizeFactor(0.025)), 1.24*math.Pow(25, -0.107), 2.5e-3) // 1.2425, printed 1.24
	kerneltest.Near(t, "surface, print in kpsi 2.70·S^−0.265", must(strength.SurfaceFactor(strength.Machined, 120*6.894757e6)), 2.70*math.Pow(120, -0.265), 2e-3)
	kerneltest.Near(t, "surface, print in kpsi 39.9·S^−0.995", must(strength.SurfaceFactor(strength.Forged, 120*6.894757e6)), 39.9*math.Pow(120, -0.995), 2e-3)
	kerneltest.Near(t, "a small bar", must(strength.SizeFactor(0.005)), 1, 1e-15)
}

// Second route for the sensitivity: the metric print of the same curve, √a in
// √mm and S in MPa, from memory of Shigley.
func TestNotchSensitivityByTheMetricPrint(t *testing.T) {
	for _, s := range []float64{400, 700, 1000, 1400} {
		root := 1.24 - 2.25e-3*s + 1.60e-6*s*s - 4.11e-10*s*s*s
		kerneltest.Near(t, "bending", must(strength.NotchSensitivity(q.Stress(s*1e6), 0.001)), 1/(1+root), 0.005)
		root = 0.958 - 1.83e-3*s + 1.43e-6*s*s - 4.11e-10*s*s*s
		kerneltest.Near(t, "torsion", must(strength.NotchSensitivityTwisting(q.Stress(s*1e6), 0.001)), 1/(1+root), 0.005)
	}
}

// Limits: without mean Gerber and Goodman are one; without amplitude all are
// Su/σm; between, Soderberg ≤ Goodman ≤ Gerber.
func TestTheLinesMeetAtTheirEnds(t *testing.T) {
	const limit, yield, tensile = 200e6, 400e6, 600e6
	safeties := func(s strength.Swing) (so, goodman, ge float64) {
		so, err := strength.SoderbergSafety(s, limit, yield)
		kerneltest.Fine(t, err)
		goodman, err = strength.GoodmanSafety(s, limit, tensile)
		kerneltest.Fine(t, err)
		ge, err = strength.GerberSafety(s, limit, tensile)
		kerneltest.Fine(t, err)
		return so, goodman, ge
	}
	so, goodman, ge := safeties(strength.Swing{Amplitude: 100e6})
	kerneltest.Near(t, "Soderberg without mean", so, 2, 1e-12)
	kerneltest.Near(t, "Goodman without mean", goodman, 2, 1e-12)
	kerneltest.Near(t, "Gerber without mean", ge, 2, 1e-12)
	so, goodman, ge = safeties(strength.Swing{Mean: 100e6})
	kerneltest.Near(t, "Soderberg without amplitude", so, 4, 1e-12)
	kerneltest.Near(t, "Goodman without amplitude", goodman, 6, 1e-12)
	kerneltest.Near(t, "Gerber without amplitude", ge, 6, 1e-12)
	so, goodman, ge = safeties(strength.Swing{Amplitude: 80e6, Mean: 120e6})
	if !(so < goodman && goodman < ge) {
		t.Errorf("Soderberg %v, Goodman %v, Gerber %v; want them rising", so, goodman, ge)
	}
	kerneltest.Near(t, "Gerber put back", ge*80e6/limit+math.Pow(ge*120e6/tensile, 2), 1, 1e-12)
}

func TestOutsideTheirRangesFatigueFactorsAreNoted(t *testing.T) {
	for what, call := range map[string]func() (float64, []basis.Note, error){
		"soft steel":         func() (float64, []basis.Note, error) { return strength.NotchSensitivity(250e6, 0.001) },
		"soft steel twisted": func() (float64, []basis.Note, error) { return strength.NotchSensitivityTwisting(250e6, 0.001) },
		"a soft surface":     func() (float64, []basis.Note, error) { return strength.SurfaceFactor(strength.Ground, 250e6) },
		"a hard surface":     func() (float64, []basis.Note, error) { return strength.SurfaceFactor(strength.Machined, 2e9) },
		"a propeller shaft":  func() (float64, []basis.Note, error) { return strength.SizeFactor(0.4) },
	} {
		v, notes, err := call()
		if err != nil || !(v > 0 && v <= 1) || len(notes) != 1 || notes[0].Grade != basis.Extrapolated {
			t.Errorf("%s: %v, notes %v, %v; want a factor and one note", what, v, notes, err)
		}
	}
}

func TestFatigueRefusals(t *testing.T) {
	nan := math.NaN()
	whole := strength.Factors{Surface: 1, Size: 1, Load: 1, Reliability: 1, Kept: 1}
	limit := func(f strength.Factors) error { _, err := strength.EnduranceLimit(600e6, f); return err }
	some := strength.Swing{Amplitude: 1e6, Mean: 1e6}
	blamed(t, []blame{
		{"steel harder than the curve", "tensile strength", func() error { _, _, err := strength.NotchSensitivity(1.8e9, 0.001); return err }},
		{"steel harder than the curve", "tensile strength", func() error { _, _, err := strength.NotchSensitivityTwisting(1.6e9, 0.001); return err }},
		{"no radius", "radius of the notch", func() error { _, _, err := strength.NotchSensitivity(6e8, 0); return err }},
		{"a notch that helps", "stress concentration factor", func() error { _, err := strength.FatigueFactor(0.9, 1); return err }},
		{"too sensitive", "notch sensitivity", func() error { _, err := strength.FatigueFactor(2, 1.1); return err }},
		{"no steel", "tensile strength", func() error { _, err := strength.UnnotchedLimit(q.Stress(nan)); return err }},
		{"painted", "finish", func() error { _, _, err := strength.SurfaceFactor("painted", 6e8); return err }},
		{"no steel", "tensile strength", func() error { _, _, err := strength.SurfaceFactor(strength.Ground, 0); return err }},
		{"no size", "diameter", func() error { _, _, err := strength.SizeFactor(q.Length(nan)); return err }},
		{"certainty", "reliability", func() error { _, err := strength.ReliabilityFactor(1); return err }},
		{"no steel", "tensile strength", func() error { _, err := strength.EnduranceLimit(-1, whole); return err }},
		{"surface", "surface factor", func() error { f := whole; f.Surface = 0; return limit(f) }},
		{"size", "size factor", func() error { f := whole; f.Size = nan; return limit(f) }},
		{"load", "load factor", func() error { f := whole; f.Load = 2; return limit(f) }},
		{"reliability", "reliability factor", func() error { f := whole; f.Reliability = -1; return limit(f) }},
		{"treatment forgotten", "part kept", func() error { f := whole; f.Kept = 0; return limit(f) }},
		{"a swing inside out", "bending amplitude", func() error {
			_, err := strength.VonMisesSwing(strength.Between(2, 1), strength.Swing{})
			return err
		}},
		{"a mean with a sign", "shear mean", func() error {
			_, err := strength.VonMisesSwing(some, strength.Swing{Mean: -1})
			return err
		}},
		{"no load", "stress amplitude", func() error { _, err := strength.GoodmanSafety(strength.Swing{}, 1e8, 1e8); return err }},
		{"next to no load", "stress amplitude", func() error {
			_, err := strength.GerberSafety(strength.Swing{Amplitude: 5e-324}, 1e8, 1e8)
			return err
		}},
		{"no limit", "endurance limit", func() error { _, err := strength.GerberSafety(some, 0, 1e8); return err }},
		{"no strength", "tensile strength", func() error { _, err := strength.GoodmanSafety(some, 1e8, 0); return err }},
		{"no strength", "yield strength", func() error { _, err := strength.SoderbergSafety(some, 1e8, q.Stress(nan)); return err }},
		{"unknown swing", "stress mean", func() error {
			_, err := strength.SoderbergSafety(strength.Swing{Mean: q.Stress(nan)}, 1e8, 1e8)
			return err
		}},
		{"no load", "bending amplitude", func() error { _, err := strength.YieldSafety(strength.Swing{}, strength.Swing{}, 1e8); return err }},
		{"no strength", "yield strength", func() error { _, err := strength.YieldSafety(some, some, 0); return err }},
		{"inside out", "bending amplitude", func() error {
			_, err := strength.YieldSafety(strength.Swing{Amplitude: -1}, some, 1e8)
			return err
		}},
		{"inside out", "shear amplitude", func() error {
			_, err := strength.YieldSafety(some, strength.Swing{Amplitude: -1}, 1e8)
			return err
		}},
	})
}

func ExampleGoodmanSafety() {
	// 60 MPa of bending turn about on a shaft that carries 40 MPa of steady shear.
	swing, _ := strength.VonMisesSwing(strength.Swing{Amplitude: 60e6}, strength.Swing{Mean: 40e6})
	n, err := strength.GoodmanSafety(swing, 180e6, 600e6)
	fmt.Printf("%.1f %v\n", n, err)
	// Output: 2.2 <nil>
}

func ExampleFatigueFactor() {
	sensitivity, _, _ := strength.NotchSensitivity(600e6, 0.001)
	kf, err := strength.FatigueFactor(2.2, sensitivity)
	fmt.Printf("%.2f %.2f %v\n", sensitivity, kf, err)
	// Output: 0.73 1.87 <nil>
}
