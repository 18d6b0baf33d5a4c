package kerneltest

import (
	"errors"
	"math"
	"testing"

	"wornfit/calc/basis"
)

// Fine fails the test at once when a calculation refuses what it should take.
func Fine(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// Blames holds a refusal to naming the argument at fault, its value and the remedy.
func Blames(t *testing.T, what string, err error, name string) {
	t.Helper()
	var refusal *basis.Refusal
	if !errors.As(err, &refusal) || refusal.Name != name || refusal.Value == "" || refusal.Want == "" {
		t.Errorf("%s: err = %v, want %s blamed", what, err, name)
	}
}

// Near holds a result to within rel of what an outside source gives.
func Near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s = %.12g, want %.12g within %g of it", what, got, want, rel)
	}
}
