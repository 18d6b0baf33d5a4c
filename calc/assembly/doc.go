// Package assembly answers how hot a hub or how cold a shaft must be to go
// together with room to spare, what is lost on the way there, what a plug must
// measure to tell that a bore is hot enough, and how many seconds there are before
// the hub grabs.
//
// Start with HubTemperature, then Carried and GrabWindow. Sizes are those gauged at
// room temperature, and expansion is linear with the MEAN coefficient between room
// and the temperature reached: in the cold, MeanContraction, it is clearly less
// than the handbook value for warm metal.
//
// The seconds hang on what is left of the clearance: one thou more of interference
// may leave a fifth of them. GrabTime solves the flow of heat, GrabTimeAlong lets it
// run along the shaft too, GrabEstimate is quick and says how far it is off.
//
// The package does not say what heat a part may bear or how much room is wanted.
package assembly
