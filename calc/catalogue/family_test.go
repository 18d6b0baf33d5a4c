package catalogue

import "testing"

// The ends of an answer are one family; what takes other arguments is not of it.
func TestTheEndsOfAnAnswerAreOneFamily(t *testing.T) {
	for stem, want := range map[string]int{
		"grab_time":        2, // touching and centred; along the shaft is asked for more
		"contact_pressure": 0, // a calculation itself
		"nothing":          0,
		"hub":              0, // of many that take different arguments
	} {
		if got := Family(stem); len(got) != want {
			t.Errorf("%s: %d calculations, want %d", stem, len(got), want)
		}
	}
}
