// Package buildup answers how much metal a coat takes: braze, weld, spray or
// plate put on a worn shaft or into a worn bore, the filler bought for it, the
// layers it is laid in, the metal turned off again, and the heat of laying it.
//
// Start with ShaftCoat or BoreCoat, then Filler and Layers; TurnedOff and
// BoredOut for the cut back to size; SprayedCoat has a bond coat below. ArcHeat,
// PlatePeak and BarPeak tell how warm the neighbours get, Preheat how warm to
// start. Sizes are diameters, thicknesses per side. The package knows no filler
// by name and no metal but steel.
package buildup
