package wear

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Speed is how fast a clearance or bore grows, in metres of diameter a second.
// A micrometre a thousand hours is 2.8e-13.
type Speed float64

// History is what a fit has been through: a clearance or bore, which grows as it
// wears. For a shaft, give New as 0 and Now as what it has lost. U is the half
// width that a number is known to, with the same coverage for all.
type History struct {
	New, NewU     q.Length
	Now, NowU     q.Length
	Hours, HoursU q.Time // in service between the two, in seconds
}

// Rate returns the wear rate of a fit from its own history, and its uncertainty.
//
//	rate = (now − new)/t; (U/rate)² = (U²now + U²new)/(now − new)² + (Ut/t)²
//
// Readings of one gauge share its error: give NowU and NewU without it.
//
//   - Holds for: wear that has run in and goes on alike; readings and hours known apart from each other.
//   - Beyond: wear no larger than its uncertainty is noted; the rate may then be anything down to none. Running-in wears faster, a fit near its end often too.
//   - Source: a difference over a time; JCGM 100 for the uncertainty.
func Rate(h History) (rate, u Speed, notes []basis.Note, err error) {
	if err := h.check(); err != nil {
		return 0, 0, nil, err
	}
	worn, time := float64(h.Now-h.New), float64(h.Hours)
	wornU := math.Hypot(float64(h.NowU), float64(h.NewU))
	rate = Speed(worn / time)
	u = Speed(math.Hypot(wornU/time, worn*float64(h.HoursU)/(time*time)))
	return rate, u, h.notes(wornU), nil
}

// LifeLeft returns the time until a clearance or bore reaches its act limit at
// the rate it has worn, and its uncertainty. A limit already passed gives less
// than 0 and a note.
//
//	left = (act − now)·t/(now − new)
//
// The reading of today stands in both brackets; the uncertainty counts it once:
//
//	U² = (act−now)²·(t·Unew/w²)² + (t·(act−new)·Unow/w²)² + ((act−now)·Ut/w)², w = now − new
//
// All in SI units.
//
//   - Holds for: wear that goes on as it went; the act limit taken as exact.
//   - Beyond: a new lubricant, load or mate needs its own rate. Wear no larger than its uncertainty is noted.
//   - Source: JCGM 100 for the uncertainty; the slopes are worked out.
func LifeLeft(h History, act q.Length) (left, u q.Time, notes []basis.Note, err error) {
	if err := h.check(); err != nil {
		return 0, 0, nil, err
	}
	if !(act > h.New) {
		return 0, 0, nil, refuse("act limit", mm(act), "more than the size when new, "+mm(h.New))
	}
	worn, room, time := float64(h.Now-h.New), float64(act-h.Now), float64(h.Hours)
	byNew := room * time * float64(h.NewU) / (worn * worn)
	byNow := float64(act-h.New) * time * float64(h.NowU) / (worn * worn)
	byHours := room * float64(h.HoursU) / worn
	notes = h.notes(math.Hypot(float64(h.NowU), float64(h.NewU)))
	if room < 0 {
		notes = append(notes, basis.Note{Says: "the act limit is already passed by " + mm(h.Now-act), Source: "reading", Grade: basis.Derived})
	}
	return q.Time(lifeLeft(float64(h.New), float64(h.Now), float64(act), time)), q.Time(math.Sqrt(byNew*byNew + byNow*byNow + byHours*byHours)), notes, nil
}

func (h History) check() error {
	switch {
	case !(h.New >= 0):
		return refuse("size when new", mm(h.New), "0 or more")
	case !worn(float64(h.New), float64(h.Now)):
		return refuse("size now", mm(h.Now), "more than when new, "+mm(h.New)+"; what has not worn has no rate")
	case !(h.Hours > 0):
		return refuse("time in service", hours(h.Hours), "more than 0")
	case !(h.NewU >= 0 && h.NowU >= 0):
		return refuse("uncertainty of a size", mm(min(h.NewU, h.NowU)), "0 or more")
	case !(h.HoursU >= 0):
		return refuse("uncertainty of the time", hours(h.HoursU), "0 or more")
	}
	return nil
}

// worn asks for a picometre of wear, our choice: less is the rounding of two
// sizes, and a time divided by it is without bounds.
func worn(new, now float64) bool { return now-new > 1e-12 }

func (h History) notes(wornU float64) []basis.Note {
	if wornU < float64(h.Now-h.New) {
		return nil
	}
	return []basis.Note{{
		Says:   "the wear, " + mm(h.Now-h.New) + ", is no larger than its uncertainty, " + mm(q.Length(wornU)) + ": the rate may be none",
		Source: "JCGM 100", Grade: basis.Derived,
	}}
}

func lifeLeft(new, now, act, time float64) float64 { return (act - now) / (now - new) * time }

func refuse(name, value, want string) error {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}

func mm(l q.Length) string { return fmt.Sprintf("%.6g mm", 1e3*float64(l)) }

func hours(t q.Time) string { return fmt.Sprintf("%.6g h", float64(t)/3600) }
