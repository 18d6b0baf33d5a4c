// Package joints answers what a brazed lap or sleeve and a joint held with
// retaining compound carry, what gap a braze meets when hot, and why a sprayed
// coat will not do.
//
// Start with FlatLap or TubeLap and HotGap for a braze, with BondHolds for a
// compound; both carry torque and thrust by Sleeve. SprayBars gives reasons, no
// number: a pull-off figure of a coat is made to compare coats, not to load them.
// The package knows no brand; catalogue strengths are given to it.
package joints
