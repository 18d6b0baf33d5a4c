package interference

import (
	"fmt"

	"wornfit/calc/basis"
	"wornfit/calc/quantity"
)

// Elastic is how a material answers pressure and heat.
type Elastic struct {
	E     quantity.Stress    // Young's modulus
	Nu    float64            // Poisson's number, 0 to 0.5
	Alpha quantity.Expansion // mean expansion over the temperatures used; only Press uses it
}

// Ring is one round part of one material.
type Ring struct {
	Bore    quantity.Length // 0 if solid
	Outside quantity.Length
	Elastic
}

// thick is (D²+d²)/(D²−d²), written so that a solid part gives 1 and each
// diameter stands once.
func thick(bore, outside float64) float64 {
	q := outside / bore
	return 1 + 2/(q*q-1)
}

func (r Ring) thick() float64 { return thick(float64(r.Bore), float64(r.Outside)) }

// bored refuses what has no bore to press on, or no wall.
func (r Ring) bored(part string) error {
	if !(r.Bore > 0 && r.Bore < r.Outside) {
		return refuse("bore of the "+part, mm(r.Bore), "more than 0 and less than its outside diameter, "+mm(r.Outside))
	}
	return r.Elastic.check(part)
}

// round refuses what has no wall; a solid part passes.
func (r Ring) round(part string) error {
	if !(r.Bore >= 0 && r.Bore < r.Outside) {
		return refuse("bore of the "+part, mm(r.Bore), "0 (solid) or more and less than its outside diameter, "+mm(r.Outside))
	}
	return r.Elastic.check(part)
}

func (m Elastic) check(part string) error {
	switch {
	case !(m.E > 0):
		return refuse("Young's modulus of the "+part, fmt.Sprintf("%.4g GPa", m.E/1e9), "more than 0")
	case !(m.Nu >= 0 && m.Nu <= 0.5):
		return refuse("Poisson's number of the "+part, fmt.Sprintf("%.4g", m.Nu), "from 0 to 0.5")
	}
	return nil
}

func refuse(name, value, want string) error {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}

func mm(l quantity.Length) string { return fmt.Sprintf("%.6g mm", 1e3*float64(l)) }

func mpa(p quantity.Stress) string { return fmt.Sprintf("%.6g MPa", float64(p)/1e6) }
