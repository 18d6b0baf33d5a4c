package knowledge

import "testing"

// The shipped rule base has no fault: this is `wornfit knowledge check` of it.
func TestShippedBaseLoadsWithoutFaults(t *testing.T) {
	_, faults := Load()
	for _, f := range faults {
		t.Error(f.Error())
	}
}
