package kerneltest

import (
	"math"
	"testing"
)

// Fine fails the test at once when a calculation refuses what it should take.
func Fine(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// Near holds a result to within rel of what an outside source gives.
func Near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s = %.12g, want %.12g within %g of it", what, got, want, rel)
	}
}
