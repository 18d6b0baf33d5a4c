package gears

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

func above0(name, value string, x float64) error {
	if !(x > 0) || math.IsInf(x, 1) {
		return refuse(name, value, "more than 0")
	}
	return nil
}

func refuse(name, value, want string) error {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}

// finite refuses what is no number.
func finite(name, value string, x float64) error {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return refuse(name, value, "a number")
	}
	return nil
}

func firstOf(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func mm(l q.Length) string    { return fmt.Sprintf("%.6g mm", 1e3*float64(l)) }
func mpa(p q.Stress) string   { return fmt.Sprintf("%.6g MPa", float64(p)/1e6) }
func nm(t q.Torque) string    { return fmt.Sprintf("%.6g N m", float64(t)) }
func rpm(n q.Rotation) string { return fmt.Sprintf("%.6g rpm", 60*float64(n)) }
func watt(p q.Power) string   { return fmt.Sprintf("%.6g W", float64(p)) }
func deg(x float64) string    { return fmt.Sprintf("%.6g°", 180/math.Pi*x) }
func plain(x float64) string  { return fmt.Sprintf("%.6g", x) }
