package interference

import (
	"testing"

	"wornfit/calc/kernel/kerneltest"
)

func TestKernelsKeepTheirPromises(t *testing.T) { kerneltest.Check(t, Kernels()) }
