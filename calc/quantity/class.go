package quantity

import (
	"slices"
	"strconv"
	"strings"
)

// The letters of fundamental deviation of ISO 286-1 (holes; shafts the same in
// small letters) and the classes of ANSI B4.1. Only the spelling is checked
// here; the limits stand in calc/fits.
var (
	isoLetters = words("A B C CD D E EF F FG G H J JS K M N P R S T U V X Y Z ZA ZB ZC")
	ansiWords  = words("RC LC LT LN FN")
)

// classOf reads a class such as H7, h6, H7/p6 or RC4.
func classOf(word string) (string, bool) {
	hole, shaft, fit := strings.Cut(word, "/")
	hole, shaft = strings.TrimSpace(hole), strings.TrimSpace(shaft)
	if !oneClass(hole) {
		return "", false
	}
	if !fit {
		return hole, true
	}
	return hole + "/" + shaft, oneClass(shaft)
}

func oneClass(s string) bool {
	n := strings.IndexAny(s, "0123456789")
	if n < 1 {
		return false
	}
	letters, grade := s[:n], s[n:]
	g, err := strconv.Atoi(grade)
	if err != nil || len(grade) > 2 || grade != "01" && len(grade) > 1 && grade[0] == '0' {
		return false
	}
	if slices.Contains(ansiWords, letters) {
		return g >= 1 && g <= 11
	}
	upper := strings.ToUpper(letters)
	same := letters == upper || letters == strings.ToLower(letters)
	return same && slices.Contains(isoLetters, upper) && g <= 18
}
