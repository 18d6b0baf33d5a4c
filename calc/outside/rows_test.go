package outside

import (
	"math"
	"testing"
)

func TestEveryStoredNumberHasAKnownUnit(t *testing.T) {
	for _, file := range []string{"worked.json", "reference.json", "fe_press.json", "fe_fillets.json", "shop.json", "bearings.json", "fatigue.json", "bearing_film.json"} {
		for id, row := range Read(t, file) {
			for _, values := range []map[string]Value{row.Inputs, row.Expected} {
				for name, v := range values {
					if x, _ := v.si(t, id); math.IsNaN(x) || math.IsInf(x, 0) {
						t.Errorf("%s: %s is %v", id, name, x)
					}
				}
			}
		}
	}
}

// The factors against the definitions: 1 psi is 6894.757 Pa (NIST SP 811), 1 ft/min 5.08 mm/s,
// 1 lb/in³ 27 679.90 kg/m³, 1 hp 745.6999 W.
func TestUnitsOfTheBooks(t *testing.T) {
	for unit, want := range map[string]float64{
		"psi": 6894.757, "lbf": 4.448222, "ft/min": 5.08e-3, "lbf in": 0.1129848, "kip in": 112.9848, "rpm": 1. / 60,
		"hp": 745.6999, "lb/in3": 27679.90, "in3": 1.6387064e-5, "mm/1000h": 2.777778e-10,
	} {
		if got, _ := (Value{Value: "1", Unit: unit}).si(t, unit); math.Abs(got-want) > 1e-6*want {
			t.Errorf("1 %s = %v in SI, want %v", unit, got, want)
		}
	}
}
