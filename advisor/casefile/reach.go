package casefile

import (
	"fmt"
	"slices"
)

// overrun is how far past its marks a gauge may still be read, as a share of
// the size: a 0 to 25 mm micrometer opens a little over 25. Common practice,
// no source.
const overrun = 0.02

// stations tells a reading that was not taken in the fit: stations count from
// its near end. An unworn land may lie beyond either end.
func (r *reader) stations(f *Fit) {
	long := f.Given["fit.length"]
	for _, s := range Sides {
		for _, rd := range f.Surfaces[s].Readings {
			at := rd.At
			switch {
			case !at.Known:
			case at.Lo < 0:
				r.tell(rd.Place, at.Key, fmt.Sprintf("the %s is read at station %s", s, at.Text),
					"stations count from the near end of the fit; give an unworn place outside it under lands")
			case long.Known && at.Lo > long.Hi:
				r.tell(rd.Place, at.Key, fmt.Sprintf("the %s is read at station %s and the fit is %s long", s, at.Text, long.Text),
					"check the station and the length; give an unworn place outside the fit under lands")
			}
		}
	}
}

// taken tells a size the gauge cannot have read, once for each gauge on a
// surface: what it takes is then more likely wrong than every reading.
func (r *reader) taken(f *Fit) {
	for _, s := range Sides {
		told := map[*Gauge]bool{}
		for _, rd := range slices.Concat(f.Surfaces[s].Readings, f.Surfaces[s].Lands) {
			if rd.Gauge == nil || !rd.Gauge.Takes.Known {
				continue
			}
			takes := rd.Gauge.Takes
			for _, v := range rd.Sizes {
				if v.Known && !told[rd.Gauge] && (v.Lo < takes.Lo*(1-overrun) || v.Lo > takes.Hi*(1+overrun)) {
					told[rd.Gauge] = true
					r.tell(v.At, v.Key, fmt.Sprintf("the %s reads %s and the gauge %s takes %s", s, v.Text, rd.Gauge.ID, takes.Text),
						"name the gauge it was read with, or correct what that one takes")
				}
			}
		}
	}
}
