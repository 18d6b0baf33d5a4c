package main

import (
	"errors"
	"math"
	"regexp"
	"strings"

	stdfits "wornfit/calc/fits" // the tests of this package have a fits of their own
	"wornfit/calc/quantity"
	"wornfit/cmd/wornfit/render"
)

// sized is a nominal size as typed.
type sized struct {
	nominal quantity.Length
	inch    bool // typed in inch units
	assumed bool // typed without a unit
}

var (
	// classTail is what stands at the end of '25 mm H7/p6' or '1 in RC4'.
	classTail = regexp.MustCompile(`^(.*?)\s*((?:[Rr][Cc]|[Ll][CcTtNn]|[Ff][Nn])\s*[0-9]+|(?:[A-Z]{1,2}|[a-z]{1,2})[0-9]+(?:\s*/\s*[A-Za-z]*[0-9]*|\s+[A-Za-z]{1,2}[0-9]+)?)$`)
	nearForm  = regexp.MustCompile(`^(.+?)\s*(clearance|free|loose|interference|tight)\s*(?:(?:at|on)\s+(.+))?$`)
	bothForm  = regexp.MustCompile(`^(.+?)\s*(?:interference|tight)\s+to\s+(.+?)\s*(?:clearance|free|loose)\s*(?:(?:at|on)\s+(.+))?$`)
)

const limitsHint = "for example: wornfit limits '25 H7/p6', or wornfit limits '1.000 in RC4'"

// read finds the size and the class.
func (a limitsAsked) read() (sized, string, error) {
	text := strings.TrimSpace(a.text)
	m := classTail.FindStringSubmatch(text)
	switch {
	case text == "":
		return sized{}, "", notUnderstood(limitsHint, "wornfit limits wants a size and a class")
	case m == nil:
		return sized{}, "", notUnderstood(limitsHint, "in %q no class such as H7, k6, H7/p6 or RC4 stands at the end", text)
	}
	where, head := text, m[1]
	switch {
	case head == "" && a.size == "":
		return sized{}, "", notUnderstood("put the size before it, such as '25 "+m[2]+"', or give --size", "in %q no size stands before the class", text)
	case head != "" && a.size != "":
		return sized{}, "", notUnderstood("leave out one of the two", "--size %s is given and a size stands in %q", a.size, text)
	case head == "":
		where, head = "--size", a.size
	}
	size, err := readSize(where, head)
	if err != nil {
		return size, "", err
	}
	class := strings.Join(strings.Fields(m[2]), "")
	if _, err := stdfits.ReadB41(class); err == nil {
		if size.assumed {
			return size, "", notUnderstood("write "+head+" in, or "+head+" mm", "in %q the size %s of an inch fit has no unit", text, head)
		}
		return size, class, nil
	}
	if strings.Contains(class, "/") {
		return size, class, nil
	}
	return size, strings.Join(strings.Fields(m[2]), "/"), nil // H7 p6 is H7/p6
}

// readSize reads a nominal size; a bare number is in mm, as on drawings.
func readSize(where, text string) (sized, error) {
	mm, err := quantity.UnitNamed("mm", quantity.LengthDim)
	if err != nil {
		panic(err)
	}
	t, err := quantity.ParseIn(text, mm)
	if err == nil {
		err = t.Is(quantity.Plain)
	}
	if err != nil {
		return sized{}, misread(where, err)
	}
	sys, _ := t.Speaks()
	return sized{nominal: quantity.Length(t.Best), inch: sys == quantity.Inch, assumed: t.Assumed}, nil
}

// wantedFit is a wanted clearance at a size; interference is negative.
type wantedFit struct {
	size        sized
	least, most quantity.Length
}

const nearHint = "write for example '0.03 mm clearance', '0.02 to 0.05 mm clearance', '1 thou interference' or '0.01 mm tight to 0.02 mm free'"

// readNear reads --near and the size, which stands in it, before it or in --size.
func (a limitsAsked) readNear() (wantedFit, error) {
	var out wantedFit
	text := strings.TrimSpace(a.near)
	at := ""
	if m := bothForm.FindStringSubmatch(text); m != nil {
		tight, _, err := amount(text, m[1])
		if err != nil {
			return out, err
		}
		_, free, err := amount(text, m[2])
		if err != nil {
			return out, err
		}
		out.least, out.most, at = -tight, free, m[3]
	} else if m := nearForm.FindStringSubmatch(text); m != nil {
		low, high, err := amount(text, m[1])
		if err != nil {
			return out, err
		}
		out.least, out.most, at = low, high, m[3]
		if m[2] == "interference" || m[2] == "tight" {
			out.least, out.most = -high, -low
		}
	} else {
		return out, notUnderstood(nearHint, "--near %q does not say clearance or interference", text)
	}
	sizes := map[string]string{"--near": at, "--size": a.size, "the text": strings.TrimSpace(a.text)}
	for where, given := range sizes {
		if given == "" {
			delete(sizes, where)
		}
	}
	if len(sizes) != 1 {
		return out, notUnderstood("give it once: wornfit limits --near '"+text+"' --size '25 mm'", "--near wants one nominal size, and %d are given", len(sizes))
	}
	for where, given := range sizes {
		if where == "the text" && classTail.MatchString(given) {
			return out, notUnderstood("leave the class out, or leave --near out", "%q names a class, and --near looks for one", given)
		}
		size, err := readSize(where, given)
		if err != nil {
			return out, err
		}
		out.size = size
	}
	return out, nil
}

// amount reads a clearance: one number or a range, each with its unit.
func amount(where, text string) (low, high quantity.Length, err error) {
	t, err := quantity.Parse(text, quantity.LengthDim)
	if err == nil {
		err = t.Is(quantity.Plain, quantity.Range)
	}
	if err != nil {
		return 0, 0, misread(where, err)
	}
	if t.Low < 0 {
		return 0, 0, notUnderstood(nearHint, "in %q the amount is below nought; say clearance or interference instead of a sign", where)
	}
	return quantity.Length(t.Low), quantity.Length(t.High), nil
}

func misread(where string, err error) error {
	var r *quantity.Refusal
	if errors.As(err, &r) {
		return notUnderstood(r.Remedy, "%s: %s", where, r.Says)
	}
	return err
}

// length is metres as JSON tells them: to a tenth of a nanometre, far under the
// last digit any standard prints, so that 21 µm is 0.000021.
func length(l quantity.Length) float64 { return math.Round(float64(l)*1e10) / 1e10 }

func span(least, most quantity.Length) render.Span {
	return render.Span{Min: length(least), Max: length(most)}
}
