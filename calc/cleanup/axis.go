package cleanup

import (
	"cmp"
	"fmt"
	"slices"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// ShaftAbout returns the size at which a shaft turned about a fixed axis just
// cleans up.
//
//	2·min |point - axis|
//
// Limits and source:
//
//   - Holds for: points all round the axis, no gap of 180° or more.
//   - Beyond: gaps over 45° bring a note; 180° and more are refused.
//   - Source: geometry.
func ShaftAbout(profile []Point, axis Point) (q.Length, []basis.Note, error) {
	notes, err := surround(profile, axis)
	if err != nil {
		return 0, nil, err
	}
	least, _ := extremes(profile, axis)
	return q.Length(2 * least), notes, nil
}

// BoreAbout returns the size at which a hole bored about a fixed axis just
// cleans up.
//
//	2·max |point - axis|
//
// Limits and source:
//
//   - Holds for: points all round the axis, no gap of 180° or more.
//   - Beyond: gaps over 45° bring a note; 180° and more are refused.
//   - Source: geometry.
func BoreAbout(profile []Point, axis Point) (q.Length, []basis.Note, error) {
	notes, err := surround(profile, axis)
	if err != nil {
		return 0, nil, err
	}
	_, most := extremes(profile, axis)
	return q.Length(2 * most), notes, nil
}

// RunOutAbout returns the full indicator reading of a profile turned about an axis.
//
//	max |point - axis| - min |point - axis|;  a round profile set off by e reads 2e
//
// Limits and source:
//
//   - Holds for: points all round the axis, no gap of 180° or more.
//   - Beyond: gaps over 45° bring a note; 180° and more are refused.
//   - Source: geometry.
func RunOutAbout(profile []Point, axis Point) (q.Length, []basis.Note, error) {
	notes, err := surround(profile, axis)
	if err != nil {
		return 0, nil, err
	}
	least, most := extremes(profile, axis)
	return q.Length(most - least), notes, nil
}

// ShaftAboutLeaving is ShaftAbout with a witness allowed: the largest turned
// size that leaves no more than a share of the turn untouched.
//
//	2·r, r the largest radius with at most `share` of the turn below it
//
// Each point stands for the turn half-way to its neighbours. One section only;
// of several sections take the smallest size.
//
//   - Holds for: share from 0 (no witness) to below 1, points all round.
//   - Beyond: refused.
//   - Source: geometry.
func ShaftAboutLeaving(profile []Point, axis Point, share float64) (q.Length, []basis.Note, error) {
	return leaving(profile, axis, share, cmp.Compare[float64])
}

// BoreAboutLeaving is BoreAbout with a witness allowed: the smallest bored size
// that leaves no more than a share of the turn untouched.
//
//	2·r, r the least radius with at most `share` of the turn above it
//
// Limits and source:
//
//   - Holds for: share from 0 (no witness) to below 1, points all round.
//   - Beyond: refused.
//   - Source: geometry.
func BoreAboutLeaving(profile []Point, axis Point, share float64) (q.Length, []basis.Note, error) {
	return leaving(profile, axis, share, func(a, b float64) int { return cmp.Compare(b, a) })
}

// leaving walks from the most worn point on and passes over the share.
func leaving(profile []Point, axis Point, share float64, order func(a, b float64) int) (q.Length, []basis.Note, error) {
	if !(share >= 0 && share < 1) {
		return 0, nil, refuse("share left untouched", fmt.Sprintf("%g", share), "from 0, no witness, to below 1")
	}
	notes, err := surround(profile, axis)
	if err != nil {
		return 0, nil, err
	}
	of, _ := spread(profile, axis)
	worst := make([]int, len(profile))
	for i := range worst {
		worst[i] = i
	}
	slices.SortStableFunc(worst, func(a, b int) int {
		return order(radius(profile[a], axis), radius(profile[b], axis))
	})
	passed := 0.0
	for _, i := range worst {
		if passed += of[i]; passed > share+1e-12 {
			return q.Length(2 * radius(profile[i], axis)), notes, nil
		}
	}
	return q.Length(2 * radius(profile[worst[len(worst)-1]], axis)), notes, nil
}
