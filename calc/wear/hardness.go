package wear

import "fmt"

// Brinell is a hardness in HB.
type Brinell float64

// HardnessShare returns how hard one face is against another, both in Brinell.
//
//	s = H/Hwith
//
// A plain number.
//
//   - Holds for: two hardnesses measured alike, in one scale.
//   - Beyond: wear falls with hardness, but not strictly in proportion; a share ranks two faces, no more.
//   - Source: a quotient.
func HardnessShare(of, with Brinell) (float64, error) {
	switch {
	case !(of > 0):
		return 0, refuse("hardness", fmt.Sprintf("%.4g HB", float64(of)), "more than 0")
	case !(with > 0):
		return 0, refuse("hardness it is held against", fmt.Sprintf("%.4g HB", float64(with)), "more than 0")
	}
	return float64(of / with), nil
}
