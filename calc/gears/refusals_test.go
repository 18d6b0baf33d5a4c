package gears_test

import (
	"errors"
	"math"
	"testing"

	"wornfit/calc/basis"
)

type refused struct {
	what, blame string
	call        func() error
}

func checkRefusals(t *testing.T, cases []refused) {
	t.Helper()
	for _, c := range cases {
		var refusal *basis.Refusal
		if err := c.call(); !errors.As(err, &refusal) || refusal.Name != c.blame || refusal.Want == "" || refusal.Value == "" {
			t.Errorf("%s: err = %v, want %s blamed", c.what, err, c.blame)
		}
	}
}

var nan = math.NaN()
