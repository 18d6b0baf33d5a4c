// Package keyed answers what torque a key or a pin carries between a shaft and
// a hub, and which key belongs to a shaft.
//
// Start with ShearTorque and CrushTorque for a parallel key, PinShearTorque and
// PinCrushTorque for round pins half in each part, CrossPin for one right
// through; with KeyFor for the standard key of a shaft. The smallest torque
// counts, and the crushing stress is that of the weakest of shaft, hub and pin.
// The package knows no material and no safety factor.
package keyed
