package strength_test

import (
	"testing"
	"wornfit/calc/kernel/kerneltest"
)

// blame is a call that must be refused, and the argument it must blame.
type blame struct {
	what, name string
	call       func() error
}

func blamed(t *testing.T, cases []blame) {
	t.Helper()
	for _, c := range cases {
		kerneltest.Blames(t, c.what, c.call(), c.name)
	}
}
