// Package wear answers how fast a fit has worn, how long it has left until it
// needs repair again, and what a wear factor says about a bush that has no
// history of its own.
//
// Start with Rate: the fit's own wear and hours are the best witness there is;
// RemeasureAfter says when to look again.
// BushLife and Depth rest on a factor that varies ten-fold; they tell weeks from
// years, no more. The package knows no material and no act limit.
package wear
