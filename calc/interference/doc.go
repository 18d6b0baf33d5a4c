// Package interference answers how hard two or more round parts press on each
// other, what that does to their sizes, when they yield, what the joint holds
// and what pressing it takes.
//
// Start with ContactPressure for a shaft in a hub, with Press for any number of
// layers, warm or cold. The gives (HubGive, BackedBushGive and their fellows)
// say how a part or a nest of parts yields to pressure; two gives and an
// interference are a joint. Interference is on diameter, pressure is positive
// where parts press, all parts are elastic and as long as the joint.
//
// The package does not choose a fit, knows no material and no friction value,
// and judges nothing: what is too much is for the rules to say.
package interference
