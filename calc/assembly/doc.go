// Package assembly answers how hot a hub or how cold a shaft must be to go
// together with room to spare, and what room there is at given temperatures.
//
// Start with HubTemperature. Sizes are those gauged at room temperature, and
// expansion is linear with the MEAN coefficient between room and the temperature
// reached: in the cold it is clearly less than the handbook value for warm metal.
//
// The package does not say what heat a part may bear, how much room is wanted or
// how long there is before the hub grabs.
package assembly
