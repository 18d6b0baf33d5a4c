// Package film answers whether the oil of a plain bearing carries the journal,
// how thick the film is, what it costs in friction and oil, and how warm it gets.
//
// Start with Petroff for a bearing that hardly carries anything, with Run for one
// that does, with FilmRatio for what the film must clear, and with FedTemperature
// or HousedTemperature when the viscosity is not known because the temperature is
// not. Clearance is on diameter, as it is gauged. The package knows no bush
// material: pressure, speed and pv of a bush without film are calc/bearing's.
package film
