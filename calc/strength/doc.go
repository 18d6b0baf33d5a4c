// Package strength answers what stress a round shaft carries, what turning it
// down costs in strength and stiffness, how sharp a shoulder, a groove or a
// keyway raises the stress, how long a shaft lasts under swinging load and what
// a repair leaves of that, and what wall a bored hub has left.
//
// Start with Bending and Twisting, join them with VonMises, then StrengthLeft.
// Stresses are nominal, on the small diameter; FilletBending, GrooveBending and
// their fellows for torsion raise them at a notch.
//
// For fatigue: the factor of the notch times NotchSensitivity gives FatigueFactor;
// EnduranceLimit is what the shaft stands; GoodmanSafety or SoderbergSafety sets
// the one against the other. FatigueLeft compares before and after a repair
// without a load. A pressed-on edge, a plated, sprayed or welded seat has factors
// of its own: PressedEdge, KeyedHub, TreatmentFor.
//
// The package knows no material, no life of so many turns and no crack.
package strength
