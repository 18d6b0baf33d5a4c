package strength_test

import (
	"errors"
	"testing"

	"wornfit/calc/basis"
)

// blame is a call that must be refused, and the argument it must blame.
type blame struct {
	what, name string
	call       func() error
}

func blamed(t *testing.T, cases []blame) {
	t.Helper()
	for _, c := range cases {
		var refusal *basis.Refusal
		if err := c.call(); !errors.As(err, &refusal) || refusal.Name != c.name || refusal.Want == "" {
			t.Errorf("%s: err = %v, want %s blamed", c.what, err, c.name)
		}
	}
}
