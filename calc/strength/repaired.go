package strength

import q "wornfit/calc/quantity"

// Journal is a shaft at the place that would break: its diameter, the fatigue
// factor of its notch and what a treatment keeps of its limit.
type Journal struct {
	Diameter q.Length
	Factor   float64 // Kf of the fillet, groove, keyway or edge; 1 for none
	Kept     float64 // part of the limit a treatment leaves; 1 for none
}

// FatigueLeft returns the part of its strength against fatigue that a shaft
// keeps after a repair: a smaller diameter, another notch, another surface.
//
//	left = (now⁴−b⁴)/now · was/(was⁴−b⁴) · Kf_was/Kf_now · kept_now/kept_was
//
// More than 1 says that the repair is the stronger, by a better radius.
//
//   - Holds for: the same load, steel and place, bending or torsion, each with its own factors.
//   - Beyond: a case or a rolled skin turned off takes its own part; what the smaller size gains (1 % for a tenth off) is left out. Hours already run are not counted.
//   - Source: nominal stress, fatigue factor and limit in one ratio, any strength text.
func FatigueLeft(bore q.Length, was, now Journal) (float64, error) {
	if err := turned(bore, was.Diameter, now.Diameter); err != nil {
		return 0, err
	}
	for _, j := range []struct {
		when string
		Journal
	}{{"before", was}, {"after", now}} {
		if !(j.Factor >= 1 && j.Factor <= 100) {
			return 0, refuse("fatigue factor "+j.when, number(j.Factor), "1, for no notch, to 100")
		}
		if !(j.Kept >= 0.01 && j.Kept <= 1) {
			return 0, refuse("part kept "+j.when, number(j.Kept), "0.01 to 1, which is no treatment")
		}
	}
	return strengthLeft(float64(bore), float64(was.Diameter), float64(now.Diameter)) * was.Factor / now.Factor * now.Kept / was.Kept, nil
}
