package casefile

import "wornfit/rules/fault"

// Fit joins a surface of a shaft part to a surface of a hub part.
type Fit struct {
	ID, Called    string
	Hub, Shaft    *Part
	Purpose       string
	Given         Givens // fit.nominal, fit.length
	WhenNew       Value  // least to most clearance when new, m; interference is negative
	Surfaces      map[Side]*Surface
	Shake         []Shake
	EndFloat      Value
	EndFloatWants Value
	At            fault.Place
}

// Surface is what was found on one of the two surfaces.
type Surface struct {
	Readings []Reading
	Lands    []Reading         // the same surface where nothing ran on it
	Seen     map[string]string // sign -> word with spaces, or NotLooked
	Score    Value             // depth of the deepest score
	Witness  Value             // depth of score that may stay after truing
	Lobes    Value             // how far from round it may be without a two-point gauge seeing it, on diameter
	LobesHow string            // how the surface was made, when that was given in place of a size
	FaceNear Value             // how deep the face at the near end is worn
	FaceFar  Value
	At       fault.Place
}

// Reading is one place on a surface, read once or several times.
type Reading struct {
	At      Value // along the surface from the near end, m
	Toward  Value // the clock angle of the gauge, rad
	Sizes   []Value
	Gauge   *Gauge // nil only when a fault was told
	Round   bool   // taken so that odd lobes show
	PartAt  Value  // temperatures
	GaugeAt Value
	Place   fault.Place
}

// Shake is the lift of one part in the other by an indicator.
type Shake struct {
	Toward, At, Move Value
	Gauge            *Gauge
	Place            fault.Place
}

// Part returns the part a side of the fit belongs to.
func (f *Fit) Part(s Side) *Part {
	if s == Hub {
		return f.Hub
	}
	return f.Shaft
}

// given returns what the part on a side says of one name; nothing when the
// part is missing.
func (f *Fit) given(s Side, word string) Value {
	if p := f.Part(s); p != nil {
		return p.Given[string(s)+"."+word]
	}
	return Value{}
}
