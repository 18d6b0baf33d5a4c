package buildup

import (
	"fmt"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Sprayed is a sprayed coat on a shaft: a bond coat first, the rest on it in
// passes. Thicknesses are per side.
type Sprayed struct {
	Coat
	Bond, Pass                    q.Length
	BondDensity, TopDensity       q.Density
	BondEfficiency, TopEfficiency float64
}

// Spray is what a sprayed coat takes.
type Spray struct {
	BondVolume, TopVolume q.Volume
	BondMass, TopMass     q.Mass // to feed
	Passes                int    // of the top coat
}

// SprayedCoat returns the metal, the wire or powder to feed and the passes of a
// sprayed coat on a shaft with its bond coat.
//
//	bond: π/4·((d+2b)²−d²)·(L+2e); top: the rest up to the size as sprayed; m = ρ·V/efficiency; passes = top/pass, rounded up
//
// Each is that of ShaftCoat, Filler and Layers.
//
//   - Holds for: a coat of even thickness; efficiencies that count overspray past a small shaft too. A bond coat of 0.13 to 0.18 mm is usual (a maker's sheet, read in extract).
//   - Beyond: a coat no thicker than its bond coat is refused. Coats are porous: use the density as sprayed, a tenth below solid (common practice, no source).
//   - Source: geometry and arithmetic.
func SprayedCoat(s Sprayed) (Spray, error) {
	if !(s.Bond >= 0) {
		return Spray{}, refuse("bond coat", mm(s.Bond), "0 or more")
	}
	if _, err := ShaftCoat(s.Coat); err != nil {
		return Spray{}, err
	}
	bonded := s.From + 2*s.Bond
	if !(bonded < s.As) {
		return Spray{}, refuse("bond coat", mm(s.Bond), "less than the whole coat, "+mm((s.As-s.From)/2))
	}
	var out Spray
	var err error
	bond, top := s.Coat, s.Coat
	bond.As, top.From = bonded, bonded
	if s.Bond > 0 {
		if out.BondVolume, err = ShaftCoat(bond); err != nil {
			return Spray{}, err
		}
		if out.BondMass, err = Filler(out.BondVolume, s.BondDensity, s.BondEfficiency); err != nil {
			return Spray{}, err
		}
	}
	if out.TopVolume, err = ShaftCoat(top); err != nil {
		return Spray{}, err
	}
	if out.TopMass, err = Filler(out.TopVolume, s.TopDensity, s.TopEfficiency); err != nil {
		return Spray{}, err
	}
	out.Passes, err = Layers((s.As-bonded)/2, s.Pass)
	return out, err
}

// Feed is how metal is fed to a build-up.
type Feed string

// The ways of feeding there is a range for.
const (
	CoveredRod  Feed = "covered rod"
	GasWire     Feed = "gas-shielded wire"
	TIGRod      Feed = "TIG rod"
	BrazeRod    Feed = "braze rod"
	FlameWire   Feed = "flame-sprayed wire"
	ArcWire     Feed = "arc-sprayed wire"
	FlamePowder Feed = "flame-sprayed powder"
	FastFlame   Feed = "fast-flame powder"
)

// stays is the part of what is bought that stays on the work, least and most, rods
// with their stub ends: from memory of welders' and sprayers' handbooks.
var stays = map[Feed][2]float64{
	CoveredRod: {0.55, 0.70}, GasWire: {0.85, 0.98}, TIGRod: {0.85, 1}, BrazeRod: {0.7, 0.9},
	FlameWire: {0.60, 0.85}, ArcWire: {0.50, 0.75}, FlamePowder: {0.50, 0.85}, FastFlame: {0.30, 0.60},
}

// DepositEfficiency returns the part of what is bought that stays on the work, as
// a range, for Filler.
//
//	a table by the way of feeding
//
// The least is the one to buy by.
//
//   - Holds for: shafts wide enough to take the whole spray, some 50 mm; rods used down to 50 mm stubs.
//   - Beyond: a thin shaft catches less of a spray: count its share of the spray's width besides.
//   - Source: welders' and sprayers' handbooks, from memory.
func DepositEfficiency(f Feed) (least, most float64, notes []basis.Note, err error) {
	r, known := stays[f]
	if !known {
		return 0, 0, nil, refuse("way of feeding", "'"+string(f)+"'", fmt.Sprintf("%s, %s, %s, %s, %s, %s, %s or %s", CoveredRod, GasWire, TIGRod, BrazeRod, FlameWire, ArcWire, FlamePowder, FastFlame))
	}
	return r[0], r[1], []basis.Note{{Says: "how much stays is a range from memory; buy by the least", Source: "welders' and sprayers' handbooks, from memory", Grade: basis.Memory}}, nil
}
