// Package strength answers what stress a round shaft carries, what turning it
// down costs in strength and stiffness, how sharp a shoulder raises the stress,
// and what wall a bored hub has left.
//
// Start with Bending and Twisting, join them with VonMises, then StrengthLeft.
// Stresses are nominal, on the small diameter; FilletBending and FilletTwisting
// raise them at a shoulder. The package knows no material and no fatigue limit.
package strength
