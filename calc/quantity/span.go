package quantity

import (
	"math"
	"strconv"
	"strings"
)

// Exact; a year of 365.25 days is our choice. In s.
const (
	anHour = 3600.0        // exact
	aDay   = 24 * anHour   // exact
	aYear  = 365.25 * aDay // our choice
)

// Span says a time (s) in the unit people think of it in: s, min, h, days or
// years of 365.25 days, to three figures at most.
func Span(s float64) string {
	switch {
	case math.IsNaN(s):
		return "not known"
	case s >= 1000*aYear:
		return "over 1000 years"
	case s >= 2*aYear:
		return Figures(s/aYear) + " years"
	case s >= 3*aDay:
		return Figures(s/aDay) + " days"
	case s >= anHour || s == 0:
		return Figures(s/anHour) + " h"
	case s >= 60:
		return Figures(s/60) + " min"
	}
	return Figures(s) + " s"
}

// Figures writes a tenth below 20 and whole numbers above.
func Figures(x float64) string {
	if x < 20 {
		return strings.TrimSuffix(strconv.FormatFloat(x, 'f', 1, 64), ".0")
	}
	return strconv.FormatFloat(x, 'f', 0, 64)
}
