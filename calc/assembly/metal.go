package assembly

import (
	"fmt"

	q "wornfit/calc/quantity"
)

// Metal is what the flow of heat asks of a part. The specific heat and the
// conductivity are means over the span of temperatures passed through.
type Metal struct {
	Conductivity q.Conductivity
	Density      q.Density
	SpecificHeat q.SpecificHeat
	Expansion    q.Expansion // only asked for where a size is
}

// StillAir is about what a part at 300 °C passes on from all its faces when it is
// carried through still air, by convection and by radiation: common practice, no
// source; about 12 for a part hardly warm, 60 for a red-hot one.
const StillAir q.Film = 25

func (m Metal) conducts(whose string) error {
	if !(m.Conductivity > 0) {
		return refuse("conductivity of the "+whose, fmt.Sprintf("%.4g W/(m K)", float64(m.Conductivity)), "more than 0")
	}
	return m.stores(whose)
}

func (m Metal) stores(whose string) error {
	switch {
	case !(m.Density > 0):
		return refuse("density of the "+whose, fmt.Sprintf("%.4g kg/m³", float64(m.Density)), "more than 0")
	case !(m.SpecificHeat > 0):
		return refuse("specific heat of the "+whose, fmt.Sprintf("%.4g J/(kg K)", float64(m.SpecificHeat)), "more than 0")
	}
	return nil
}

// heat is what a cubic metre takes up for each kelvin.
func (m Metal) heat() float64 { return float64(m.Density) * float64(m.SpecificHeat) }

func film(h q.Film) string { return fmt.Sprintf("%.4g W/(m² K)", float64(h)) }

func seconds(t q.Time) string { return fmt.Sprintf("%.4g s", float64(t)) }

func kelvins(t q.TemperatureChange) string { return fmt.Sprintf("%.4g K", float64(t)) }
