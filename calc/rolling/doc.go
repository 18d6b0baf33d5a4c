// Package rolling answers what a rolling bearing needs of its seats: its sizes
// by designation, the tolerance of its bore and outside, its internal clearance,
// and what of that is left when both seats grip and the inner ring runs hotter.
//
// Start with Of for a designation such as "6206-2RS C3"; then Smoothed for the
// interference that is left of a seat, and Working for the clearance it runs
// with. Deep groove ball bearings of the 60, 62 and 63 series, bore 10 to 100 mm.
// Interference and clearance are on diameter. Which fit to choose is not
// answered here.
package rolling
