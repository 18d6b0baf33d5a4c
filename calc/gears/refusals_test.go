package gears_test

import (
	"math"
	"testing"
	"wornfit/calc/kernel/kerneltest"
)

type refused struct {
	what, blame string
	call        func() error
}

func checkRefusals(t *testing.T, cases []refused) {
	t.Helper()
	for _, c := range cases {
		kerneltest.Blames(t, c.what, c.call(), c.blame)
	}
}

var nan = math.NaN()
