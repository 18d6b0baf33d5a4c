package wear

import (
	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// half is the part of the earliest credible time after which a fit is measured
// again: common practice, no source.
const half = 0.5

// RemeasureAfter returns how much longer a fit may run before it is measured
// again: half of the earliest time at which it may credibly reach its act limit.
//
//	t = ½·(act − now − Unow)·(t − Ut)/(now + Unow − new + Unew), 0 if less
//
// Each number stands at the end of its uncertainty that is worst here, because a
// fit that is measured too early costs an hour and one too late costs the part.
//
//   - Holds for: wear that goes on as it went; the act limit taken as exact; uncertainties given with the coverage that is wanted.
//   - Beyond: at or near the act limit it is 0, with a note. A new lubricant, load or mate starts a history of its own; a calendar check may come first.
//   - Source: a difference over a rate, at the worst corner; the half is common practice, no source.
func RemeasureAfter(h History, act q.Length) (q.Time, []basis.Note, error) {
	if err := h.check(); err != nil {
		return 0, nil, err
	}
	if !(act > h.New) {
		return 0, nil, refuse("act limit", mm(act), "more than the size when new, "+mm(h.New))
	}
	t := q.Time(remeasure(float64(h.New), float64(h.Now), float64(act), float64(h.Hours), float64(h.NewU), float64(h.NowU), float64(h.HoursU)))
	if t > 0 {
		return t, nil, nil
	}
	says := "it may already be at the act limit, " + mm(act) + ": it reads " + mm(h.Now) + " and may be " + mm(h.NowU) + " more"
	if h.HoursU >= h.Hours {
		says = "the time in service is not known: " + hours(h.Hours) + " may be none"
	}
	return 0, []basis.Note{{Says: says, Source: "reading", Grade: basis.Derived}}, nil
}

func remeasure(new, now, act, time, newU, nowU, timeU float64) float64 {
	room, fast := max(act-now-nowU, 0), now+nowU-new+newU
	return half * room * max(time-timeU, 0) / fast
}
