// Package buildup answers how much metal a coat takes: braze, weld, spray or
// plate put on a worn shaft or into a worn bore, the filler bought for it, the
// layers it is laid in, and the metal turned off again.
//
// Start with ShaftCoat or BoreCoat, then Filler and Layers; TurnedOff and
// BoredOut for the cut back to size. Sizes are diameters, thicknesses per side.
// The package knows no filler, no process and no heat.
package buildup
