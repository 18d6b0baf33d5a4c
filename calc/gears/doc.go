// Package gears answers what a train does to speed and torque, what a moved
// axis does to the mesh, and what load a tooth stands.
//
// Start with Shafts for the torque that reaches the fit of a wheel, with
// ToothForces and IdlerLoad for what wears its bearing, with BacklashAt and
// ContactRatio for a shaft that is no longer where it was, with ToothStress and
// RimFactor for the teeth of a wheel that is bored out. Wheels are spur gears
// with involute teeth, outside on outside; angles are radians.
//
// The package knows no material, no pitting and no helical or bevel gear, and
// judges nothing: how much backlash is too much is for the rules to say.
package gears
