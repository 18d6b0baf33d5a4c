package gears

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Tooth is a tooth as a beam. Form is its form factor Y: see FormFactor and
// GeneratedFormFactor. A book's small y is Y/π.
type Tooth struct {
	Module, Face q.Length // diametral pitch P is the module 25.4 mm/P; face is its width along the axis
	Form         float64
}

// ToothStress returns the bending stress at the root of a tooth.
//
//	σ = Kv·Ft/(b·m·Y), or with the diametral pitch Kv·Ft·P/(b·Y)
//
// Ft is the tangential force, Kv what speed makes of it: see VelocityFactor.
//
//   - Holds for: spur teeth, the whole load on the tip of one tooth, spread along its face.
//   - Beyond: the sharp corner of the fillet is not counted, nor a thin rim (see RimFactor), nor a load at one end of the face, as after a shaft has tilted. Wear of the flanks (pitting) is another question.
//   - Source: Lewis' beam; from memory of Shigley §14-1.
func ToothStress(t Tooth, load q.Force, kv float64) (q.Stress, error) {
	if err := firstOf(t.check(), checkKv(kv)); err != nil {
		return 0, err
	}
	if !(load >= 0) || math.IsInf(float64(load), 1) {
		return 0, refuse("tangential force", fmt.Sprintf("%.6g N", float64(load)), "0 or more")
	}
	return q.Stress(toothStress(float64(t.Module), float64(t.Face), t.Form, float64(load), kv)), nil
}

// ToothLoad returns the tangential force that brings the root of a tooth to a
// given bending stress.
//
//	Ft = σ·b·m·Y/Kv
//
// With Kv of 1 it is the beam strength of the books.
//
//   - Holds for: as ToothStress.
//   - Beyond: as ToothStress.
//   - Source: Lewis' beam; from memory of Shigley §14-1.
func ToothLoad(t Tooth, stress q.Stress, kv float64) (q.Force, error) {
	if err := firstOf(t.check(), checkKv(kv), above0("bending stress", mpa(stress), float64(stress))); err != nil {
		return 0, err
	}
	return q.Force(float64(stress) / toothStress(float64(t.Module), float64(t.Face), t.Form, 1, kv)), nil
}

// Quality is how well teeth are cut, as Barth's velocity factor knows it.
type Quality struct {
	Name  string
	Barth q.Speed // pitch-line speed at which the load counts double
	Most  q.Speed // up to which books state the factor
}

const footPerMinute = 0.3048 / 60 // m/s, exact

// The qualities of the books. They do not agree on which teeth go with which
// factor: one puts cast teeth at 600 ft/min and cut ones at 1200, another
// commercial cut ones at 600 and carefully cut ones at 1200. When in doubt take
// the lower. From memory: the US forms of Shigley §14-1 and of older handbooks,
// the metric one of Khurmi & Gupta, A Textbook of Machine Design, ch. 28.
var (
	Ordinary       = Quality{Name: "ordinary", Barth: 600 * footPerMinute, Most: 2000 * footPerMinute}
	Cut            = Quality{Name: "carefully cut", Barth: 1200 * footPerMinute, Most: 4000 * footPerMinute}
	OrdinaryMetric = Quality{Name: "ordinary, metric", Barth: 3, Most: 12.5}
)

// VelocityFactor returns by how much speed raises the load on teeth.
//
//	Kv = (c + v)/c: (600 + V)/600 or (1200 + V)/1200 in ft/min, (3 + v)/3 in m/s
//
// v is the speed of the pitch line. Many books print the inverse, c/(c + v), and
// multiply the strength by it.
//
//   - Holds for: spur gears up to the speed that goes with the quality.
//   - Beyond: noted as extrapolated.
//   - Source: Barth; from memory of Shigley §14-1 and Khurmi & Gupta, A Textbook of Machine Design, ch. 28.
func VelocityFactor(k Quality, v q.Speed) (float64, []basis.Note, error) {
	if err := above0("speed of the quality", fmt.Sprintf("%.6g m/s", float64(k.Barth)), float64(k.Barth)); err != nil {
		return 0, nil, err
	}
	if !(v >= 0) || math.IsInf(float64(v), 1) {
		return 0, nil, refuse("speed of the pitch line", fmt.Sprintf("%.6g m/s", float64(v)), "0 or more, whichever way it turns")
	}
	var notes []basis.Note
	if k.Most > 0 && v > k.Most {
		notes = append(notes, basis.Note{
			Says:   fmt.Sprintf("%.3g m/s is over %.3g m/s, as far as the factor for %s teeth is stated", float64(v), float64(k.Most), k.Name),
			Source: "handbooks, from memory", Grade: basis.Memory,
		})
	}
	return velocityFactor(float64(v), float64(k.Barth)), notes, nil
}

func (t Tooth) check() error {
	return firstOf(
		above0("module", mm(t.Module), float64(t.Module)),
		above0("width of the face", mm(t.Face), float64(t.Face)),
		above0("form factor", plain(t.Form), t.Form),
	)
}

func checkKv(kv float64) error {
	if !(kv >= 1) || math.IsInf(kv, 1) {
		return refuse("velocity factor", plain(kv), "1 or more; of a factor printed below 1 take the inverse")
	}
	return nil
}

func toothStress(module, face, form, load, kv float64) float64 {
	return kv * load / (face * module * form)
}

func velocityFactor(v, barth float64) float64 { return (barth + v) / barth }
