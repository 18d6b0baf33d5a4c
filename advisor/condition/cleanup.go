package condition

import (
	"math"

	"wornfit/advisor/casefile"
	"wornfit/calc/basis"
	"wornfit/calc/cleanup"
	"wornfit/calc/interval"

	q "wornfit/calc/quantity"
)

// CleanUp is the size at which a part cleans up on one axis.
type CleanUp struct {
	Datum       string // as named in the case
	TrueAxis    bool
	Straightens bool
	Offset      Figure // of the worn surface's middle from the axis, set-up error aside
	SetUp       float64
	Size        Figure // Best from the readings; Range.Hi (bore) or Range.Lo (shaft) is sure to clean up
	Score       float64
	WallLeft    Figure // per side; of a shaft with a hole, to the hole; of a solid one, its radius
}

// cleanUps works out the clean-up size on each axis of a part. The offset
// costs twice on diameter; a score the gauge bridges costs twice its depth,
// less the witness that may stay.
func (c *Condition) cleanUps(s *Surface) []CleanUp {
	if !s.Largest.Is {
		return nil
	}
	var out []CleanUp
	for _, d := range s.Part.Datums {
		out = append(out, c.cleanUp(s, d))
	}
	return out
}

func (c *Condition) cleanUp(s *Surface, d casefile.Datum) CleanUp {
	f := c.Fit.Surfaces[s.Side]
	u := CleanUp{Datum: d.ID, TrueAxis: d.Given["true_axis"].Yes(), Straightens: d.Straight,
		Offset: c.offset(s, d), SetUp: d.Given["set_up"].Hi}
	if s.Score.Is {
		u.Score = max(0, s.Score.Range.Hi-f.Witness.Lo)
	}
	if !u.Offset.Is {
		return u
	}
	if s.Side == casefile.Hub {
		best, _, err := cleanup.BoreOffset(q.Length(s.Largest.Best+2*u.Score), q.Length(u.Offset.Best+u.SetUp))
		sure, _, err2 := cleanup.BoreOffset(q.Length(s.Largest.Range.Hi+2*u.Score), q.Length(u.Offset.Range.Hi+u.SetUp))
		u.Size = between(float64(best), float64(sure), err, err2)
	} else {
		best, _, err := cleanup.ShaftOffset(q.Length(s.Smallest.Best-2*u.Score), q.Length(u.Offset.Best+u.SetUp))
		sure, _, err2 := cleanup.ShaftOffset(q.Length(s.Smallest.Range.Lo-2*u.Score), q.Length(u.Offset.Range.Hi+u.SetUp))
		u.Size = between(float64(best), float64(sure), err, err2)
	}
	u.WallLeft = c.wall(s, u.Size)
	return u
}

// between holds the size that cleans up by the readings and the one that is
// sure to.
func between(best, sure float64, errs ...error) Figure {
	for _, err := range errs {
		if err != nil {
			return Figure{} // no metal left on that axis
		}
	}
	f := Figure{Is: true, Best: best, U: math.Abs(sure - best)}
	f.Range.Lo, f.Range.Hi = min(best, sure), max(best, sure)
	return f
}

// offset is the stated offset, half the run-out, or half of the one-sided wear
// on an axis that must stay true and was true before the wear. Wear to one side
// moves the middle by half its depth: what is stated of a true axis and is surely
// less leaves that out, so the wear is taken and a note tells. An axis that may move
// goes where the wear went: its offset is what is stated.
func (c *Condition) offset(s *Surface, d casefile.Datum) Figure {
	o := told(d)
	if !d.Given["true_axis"].Yes() || d.Given["may_move"].Yes() || !s.OneSided.Is {
		return o
	}
	half := Figure{Is: true, Best: s.OneSided.Best / 2, Range: interval.I{Lo: s.OneSided.Range.Lo / 2, Hi: s.OneSided.Range.Hi / 2}}
	switch {
	case !o.Is:
		c.note("geometry, derived in calc/cleanup", basis.Derived,
			"the offset of %s from %s is not stated: half of the one-sided wear is taken", s.Part.Called, d.ID)
		return half
	case o.Range.Hi < half.Range.Lo:
		c.note("geometry, derived in calc/cleanup", basis.Derived,
			"the offset stated of %s from %s is less than its one-sided wear makes it: half of that wear is taken; indicate the worn surface to be sure", s.Part.Called, d.ID)
		return half
	}
	return o
}

// told is the offset stated, or half the run-out.
func told(d casefile.Datum) Figure {
	if o := d.Given["offset"]; o.Known {
		return stated(o)
	}
	if !d.RunOut.Known {
		return Figure{}
	}
	low, err := cleanup.OffsetFromRunOut(q.Length(d.RunOut.Lo))
	high, err2 := cleanup.OffsetFromRunOut(q.Length(d.RunOut.Hi))
	if err != nil || err2 != nil {
		return Figure{}
	}
	return Figure{Is: true, Best: float64(low+high) / 2, Range: interval.I{Lo: float64(low), Hi: float64(high)}}
}

func (c *Condition) wall(s *Surface, size Figure) Figure {
	if !size.Is {
		return Figure{}
	}
	other := stated(s.Part.Given["hub.outside"])
	if s.Side == casefile.Shaft {
		if other = stated(s.Part.Given["shaft.bore"]); !other.Is {
			return Figure{}
		}
		size, other = other, size
	}
	if !other.Is {
		return Figure{}
	}
	f := Figure{Is: true, Best: (other.Best - size.Best) / 2}
	f.Range.Lo, f.Range.Hi = (other.Range.Lo-size.Range.Hi)/2, (other.Range.Hi-size.Range.Lo)/2
	return f
}
