// Package solve finds the sizes of one option: whether any work, a design to
// aim at, for each dimension the slice window in which its size may lie, and
// why not when none do. It sees numbers and limits, never YAML, cases or words.
//
// Start with Design. The rest of this page is how it is done; the tests are
// named after its headings.
//
// # For every true size
//
// A reading is a range: the true size lies anywhere within it. So does what a
// machine cuts, and what a gauge says of it. A limit is worth its worst value
// over all of these: the corner that the limit's slope points away from, tried
// again where the slope turns. What the case leaves unknown is a range too.
//
// # Cut to suit
//
// Dimensions are cut in order. One that suits another is moved with the size
// the other was really made, one to one, so that the machine's width of the
// earlier cut cancels and only the error of gauging it is passed on. All
// searching is done on the first of such a chain and on the differences.
//
// # A design
//
// Contraction throws out what cannot work; a Glance stops there and tells what
// each criterion may still come to. Then a fixed set of low-discrepancy points
// (or the design of a like set of picks, Model.Near), differences close about
// nought, and from the best two of them an ascent on the least margin, each
// margin counted in widths of the machine that cuts. Where the musts alone lead
// into a corner of no use, the shoulds may lead out of it: a start counts as
// lost only when both ways failed. What stood in the way is kept as a nogood,
// and a set of picks that leaves all of it as it was is not searched again. Each row is made straight at its worst corner and a small linear
// program says where to go; where a row turned from one corner to another both
// lines are kept for a while, or the ascent would go back and forth across the
// ridge. First with every should; when that fails shoulds are given up one at a
// time, the one in the way first. Where a better answer is already known
// (Model.Beat) the search ends once too many are given up. From the design with
// the largest least margin the option's aims are met in turn, as far as no limit
// is broken.
//
// # Tolerance
//
// A dimension gets its machine's width. When no design bears that, or when it
// saves at least as many shoulds as sizes are held closer, earlier dimensions
// give way first, down to twice what the gauge can tell.
//
// # Slice windows
//
// The lowest and highest size of one dimension that keep every rule while the
// other targets stand, and what suits it follows. Found by bisection; the rule
// that stops it on each side is named.
//
// # Proof
//
// A limit is kept when an enclosure over the whole box of the design shows it,
// split up to sixty-four times; broken only by a real point; else not proved.
// That no design exists is proved by contraction over bisected boxes, each
// limit at a corner that a design would have to bear; else not proved. Budgets
// count points and boxes, never seconds.
package solve
