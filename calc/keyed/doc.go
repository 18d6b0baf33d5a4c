// Package keyed answers what torque a key or a pin carries between a shaft and
// a hub, which key belongs to a shaft, and what is left of a key once the shaft
// is turned down or the bore opened.
//
// Start with ShearTorque and CrushTorque for a parallel key, PinShearTorque and
// PinCrushTorque for round pins half in each part, CrossPin for one right
// through; with KeyFor for the standard key of a shaft. Woodruff, Kennedy and
// Taper are other keys, SetScrews no key at all; Recut and RecutTorque tell what a
// repair costs, SharedTorque what several carry. The smallest torque
// counts, and the crushing stress is that of the weakest of shaft, hub and pin.
// The package knows no material and no safety factor.
package keyed
