package assembly

import (
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// GrabTimeAlong returns how long a hot hub stays loose on a shaft that runs on to
// both sides of it, so that heat escapes along the shaft. The hub is one lump, the
// shaft a rod of disks, the lag of their insides a resistance to either side of
// the gap.
//
//	ρ·c·A·∂T/∂t = k·A·∂²T/∂z² + 2π·a·(Thub − T)/(R + 1/h) under the hub
//	R = lag of the shaft, a/4k if solid, + lag of the hub;  h as in GrabTime
//
// All in SI units. The gap goes by the mean of the shaft under the hub.
//
//   - Holds for: a long shaft, the hub on it at least a hub's width from its ends; up to 3 % long of two-dimensional reference times for a hub as wide as its seat, up to 8 % for a plate of a quarter of it, whose shaft warms unevenly from skin to middle.
//   - Beyond: the hot length of the shaft cannot swell quite freely, which is not in it; a plate at a shaft's end has less time, between this and GrabTime.
//   - Source: heat in a rod, worked out; our own two-dimensional reference times (see the tests).
func GrabTimeAlong(j Joining, lie Lie) (q.Time, []basis.Note, error) {
	if err := j.check(lie); err != nil {
		return 0, nil, err
	}
	rod := newRod(&j, lie)
	time := rod.closes()
	if math.IsNaN(time) {
		return 0, nil, j.stays()
	}
	return q.Time(time), j.notes(), nil
}

// disks of the shaft are in a field, and after them the hub; under of them lie
// under the hub and are alike, each beyond is wider than its neighbour by spread:
// our choice.
const (
	disks  = 2*cells - 1
	under  = 16   // our choice
	spread = 1.15 // our choice
)

// rod is half of the shaft, from the middle of the hub on, with half of the hub.
type rod struct {
	j      *Joining
	lie    Lie
	heat   [disks + 1]float64
	pass   [disks]float64 // to the next disk; nothing from the last
	face   float64        // of the joint, over one disk
	lags   float64
	losses float64
}

func newRod(j *Joining, lie Lie) rod {
	a, in, out, half := float64(j.Seat)/2, float64(j.ShaftBore)/2, float64(j.Outside)/2, float64(j.Width)/2
	r := rod{j: j, lie: lie, lags: lag(a, in, float64(j.Shaft.Conductivity)) + lag(a, out, float64(j.Hub.Conductivity))}
	section, wide := math.Pi*(a*a-in*in), half/under
	r.face = 2 * math.Pi * a * wide
	for i := range disks {
		next := wide
		if i >= under-1 {
			next *= spread
		}
		r.heat[i] = section * wide * j.Shaft.heat()
		if i < disks-1 {
			r.pass[i] = section * float64(j.Shaft.Conductivity) / ((wide + next) / 2)
		}
		wide = next
	}
	hub := math.Pi * (out*out - a*a)
	r.heat[disks] = hub * half * j.Hub.heat()
	r.losses = float64(j.Film) * (hub + 2*math.Pi*out*half)
	return r
}

func (r *rod) closes() float64 {
	var now field
	for i := range disks {
		now[i] = float64(r.j.ShaftAt)
	}
	now[disks] = float64(r.j.HubAt)
	return course{rod: r}.march(&now)
}

func (r *rod) shaft(t *field) float64 {
	sum := 0.0
	for _, x := range t[:under] {
		sum += x
	}
	return sum / under
}

func (r *rod) gap(t *field) float64 { return r.j.gap(t[disks], r.shaft(t)) }

// step goes on by dt with the gap as it is at the start. The disks are solved as
// a part of their own and a part for each kelvin of the hub, then the hub.
func (r *rod) step(t *field, dt float64) {
	h := r.lie.film(r.gap(t), float64(r.j.Rough), t[disks], r.shaft(t))
	warms := r.face / (r.lags + 1/h)
	var up, own, ofHub [disks]float64
	left := 0.0
	for i := range disks {
		store := r.heat[i] / dt
		sum, a, b := store+left+r.pass[i], store*t[i], 0.0
		if i < under {
			sum, b = sum+warms, warms
		}
		if i > 0 {
			sum -= left * up[i-1]
			a += left * own[i-1]
			b += left * ofHub[i-1]
		}
		up[i], own[i], ofHub[i] = r.pass[i]/sum, a/sum, b/sum
		left = r.pass[i]
	}
	for i := disks - 2; i >= 0; i-- {
		own[i] += up[i] * own[i+1]
		ofHub[i] += up[i] * ofHub[i+1]
	}
	store := r.heat[disks] / dt
	sum, from := store+r.losses, store*t[disks]+r.losses*float64(r.j.Room)
	for i := range under {
		sum += warms * (1 - ofHub[i])
		from += warms * own[i]
	}
	t[disks] = from / sum
	for i := range disks {
		t[i] = own[i] + ofHub[i]*t[disks]
	}
}
