// Package bearing answers how hard and how fast a plain bearing rubs and what
// clearance it runs with when warm.
//
// Start with Pressure, SlidingSpeed or SwingSpeed, and PressureSpeed for
// choosing a bush; with HotClearance for a bush in a housing, PlainHotClearance
// for a bore in one piece. Clearance is on diameter. The package knows no bush
// material and no limits; the oil film is calc/film's.
package bearing
