package joints

import (
	"fmt"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Metal is what a face bonded with retaining compound is of.
type Metal string

// The metals there is a range for.
const (
	Steel     Metal = "steel"
	Iron      Metal = "iron"
	Stainless Metal = "stainless"
	Bronze    Metal = "bronze"
	Aluminium Metal = "aluminium"
	Zinced    Metal = "zinced"
)

// Bond is a slip joint held with retaining compound. Gap is on the diameter,
// Roughness is Ra, Strength the shear printed for clean steel at room warmth.
type Bond struct {
	Joint, Length, Gap, Roughness q.Length
	Outer, Inner                  Metal
	Strength                      q.Stress
	Warmth                        q.Temperature // the hottest in service
	HotGrade                      bool          // a grade made for heat
}

// Share is a part of the printed strength, between what makers' guides leave open.
type Share struct{ Least, Most float64 }

func (s Share) times(t Share) Share { return Share{s.Least * t.Least, s.Most * t.Most} }

// point is one place on a curve of shares.
type point struct{ at, least, most float64 }

// The shares of the printed strength are from memory of makers' design guides for
// retaining compounds, which differ; the ranges are as wide as they do.
var (
	// byGap: diametral gap in metres, from memory of makers' guides; a bearing seller's
	// sheet that was read calls 0.05 to 0.13 mm the strongest, another from 0.25 mm on
	// wants another grade.
	byGap = []point{{0, 0.9, 1}, {0.05e-3, 0.9, 1}, {0.10e-3, 0.7, 1}, {0.13e-3, 0.6, 1}, {0.15e-3, 0.5, 0.95}, {0.25e-3, 0.25, 0.6}}
	// byRoughness: Ra in metres, from memory of makers' guides.
	byRoughness = []point{{0.1e-6, 0.5, 0.8}, {0.4e-6, 0.6, 0.9}, {0.8e-6, 0.9, 1}, {3.2e-6, 0.9, 1}, {6.3e-6, 0.7, 1}, {12.5e-6, 0.5, 0.9}}
	// bySlenderness: length over diameter, from memory of makers' guides: the ends take most of a long joint's load.
	bySlenderness = []point{{0.05, 1, 1}, {1, 0.9, 1}, {2, 0.7, 1}, {4, 0.5, 0.8}}
	// byWarmth: kelvin, an ordinary grade, from memory of makers' guides; −55 °C was read on a sheet.
	byWarmth = []point{{218.15, 1, 1}, {296.15, 1, 1}, {353.15, 0.7, 1}, {393.15, 0.5, 0.8}, {423.15, 0.3, 0.6}}
	// byWarmthHot: kelvin, a grade for heat; its 230 °C was read on a sheet, the shares are from memory of makers' guides.
	byWarmthHot = []point{{218.15, 1, 1}, {296.15, 1, 1}, {373.15, 0.7, 1}, {423.15, 0.55, 0.85}, {473.15, 0.35, 0.65}, {503.15, 0.25, 0.5}}
	// byMetal: of the weaker-bonding face, without activator, from memory of makers' guides.
	byMetal = map[Metal]Share{Steel: {1, 1}, Iron: {0.7, 1}, Stainless: {0.5, 1}, Bronze: {0.5, 0.9}, Aluminium: {0.3, 0.8}, Zinced: {0.3, 0.7}}
)

// Bonded is what a joint with retaining compound bears at break, as a range.
type Bonded struct {
	Share  Share // of the printed strength
	Shear  [2]q.Stress
	Torque [2]q.Torque
	Thrust [2]q.Force
}

// BondHolds returns the torque and the thrust at which a joint with retaining
// compound gives way, from the least to the most that makers' guides promise.
//
//	τ = τ0·f(metal)·f(gap)·f(Ra)·f(warmth)·f(L/d); F = τ·π·d·L; T = F·d/2
//
// Each f is a range; the least of all and the most of all are multiplied. Torque
// and thrust are not had both at once: see SleeveUse.
//
//   - Holds for: clean, degreased, fully cured joints under steady load; gaps to 0.25 mm on the diameter, lengths to 4 diameters, Ra 0.1 to 12.5 µm, −55 to 150 °C, a hot grade to 230 °C.
//   - Beyond: refused. Oil, hot water and years weaken it; shock and reversals want a key. Divide by two at least (common practice, no source). Under some 0.02 mm the parts wipe it off: noted.
//   - Source: statics; the shares from memory of makers' design guides; limits of gap and hot grade read on a maker's sheet.
func BondHolds(b Bond) (Bonded, []basis.Note, error) {
	if err := above0("printed strength", mpa(b.Strength), float64(b.Strength)); err != nil {
		return Bonded{}, nil, err
	}
	whole := Sleeve{Joint: b.Joint, Length: b.Length, Shear: b.Strength, Sound: 1}
	if err := whole.check(); err != nil {
		return Bonded{}, nil, err
	}
	share, err := b.share()
	if err != nil {
		return Bonded{}, nil, err
	}
	out := Bonded{Share: share}
	for i, part := range []float64{share.Least, share.Most} {
		out.Shear[i] = b.Strength * q.Stress(part)
		out.Thrust[i] = q.Force(whole.force() * part)
		out.Torque[i] = q.Torque(whole.force() * part * float64(b.Joint) / 2)
	}
	notes := []basis.Note{{
		Says: "what gap, metal, finish and warmth leave is a range from memory of makers' guides; count on the least", Source: "makers' design guides, from memory", Grade: basis.Memory,
	}}
	const wiped = 0.02e-3 // common practice, no source
	if b.Gap < wiped {
		notes = append(notes, basis.Note{Says: "so close a fit wipes the compound off as it goes in", Source: "common practice, no source", Grade: basis.Practice})
	}
	return out, notes, nil
}

func (b Bond) share() (Share, error) {
	outer, known := byMetal[b.Outer]
	if !known {
		return Share{}, refuse("metal of the outer part", "'"+string(b.Outer)+"'", "steel, iron, stainless, bronze, aluminium or zinced")
	}
	inner, known := byMetal[b.Inner]
	if !known {
		return Share{}, refuse("metal of the inner part", "'"+string(b.Inner)+"'", "steel, iron, stainless, bronze, aluminium or zinced")
	}
	out := Share{min(outer.Least, inner.Least), min(outer.Most, inner.Most)}
	warmth, heat := byWarmth, "−55 to 150 °C for an ordinary grade"
	if b.HotGrade {
		warmth, heat = byWarmthHot, "−55 to 230 °C for a hot grade"
	}
	slender := float64(b.Length / b.Joint)
	for _, f := range []struct {
		name, value, want string
		curve             []point
		x                 float64
	}{
		{"gap", mm(b.Gap), "0 to 0.25 mm on the diameter", byGap, float64(b.Gap)},
		{"roughness", fmt.Sprintf("Ra %.4g µm", 1e6*float64(b.Roughness)), "Ra 0.1 to 12.5 µm", byRoughness, float64(b.Roughness)},
		{"warmth in service", fmt.Sprintf("%.4g °C", float64(b.Warmth)-273.15), heat, warmth, float64(b.Warmth)},
		{"length of the joint", mm(b.Length), "0.05 to 4 diameters, " + mm(b.Joint/20) + " to " + mm(4*b.Joint) + "; count no more", bySlenderness, slender},
	} {
		s, ok := along(f.curve, f.x)
		if !ok {
			return Share{}, refuse(f.name, f.value, f.want)
		}
		out = out.times(s)
	}
	return out, nil
}

// along is the share a curve gives at x, straight between its points.
func along(curve []point, x float64) (Share, bool) {
	const slip = 1e-9 // of the last place, so that an end worked out in figures belongs to it: our choice
	last := curve[len(curve)-1]
	if !(x >= curve[0].at*(1-slip) && x <= last.at*(1+slip)) {
		return Share{}, false
	}
	for i := 1; i < len(curve); i++ {
		a, b := curve[i-1], curve[i]
		if x <= b.at {
			u := max((x-a.at)/(b.at-a.at), 0)
			return Share{a.least + u*(b.least-a.least), a.most + u*(b.most-a.most)}, true
		}
	}
	return Share{last.least, last.most}, true
}
