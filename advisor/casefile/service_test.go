package casefile

import (
	"strings"
	"testing"
)

// A firm may do what no machine here does; a slip in what machines do is told.
func TestWhatFirmsDo(t *testing.T) {
	text := string(file(t, "cases/lever-eye.yaml"))
	for does, says := range map[string]string{"grind": "", "[spray, hone]": "", "bor": "did you mean bore?", "[turn, grnd]": "did you mean grind?"} {
		c, faults := Read("case.yaml", []byte(strings.Replace(text, "does: grind, called: cylindrical", "does: "+does+", called: cylindrical", 1)), vocabulary(t), ids(t))
		switch {
		case says == "" && len(faults) > 0:
			t.Errorf("%s: %v", does, faults)
		case says != "" && (len(faults) != 1 || faults[0].Remedy != says):
			t.Errorf("%s: %v", does, faults)
		case says == "" && len(c.Services) != 1:
			t.Errorf("%s: %d services", does, len(c.Services))
		}
	}
}
