package rolling

import (
	"regexp"
	"strings"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Group is a group of radial internal clearance.
type Group string

// The groups of the table. CN is the normal one, which is not written on a bearing.
const (
	C2 Group = "C2"
	CN Group = "CN"
	C3 Group = "C3"
)

// Designation is a bearing's number taken apart.
type Designation struct {
	Series, Code string // 62 and 06
	Seals        string // as written: RS, 2RS, Z, ZZ, 2Z; empty if open
	Group        Group
}

func (d Designation) String() string {
	text := d.Series + d.Code
	if d.Seals != "" {
		text += "-" + d.Seals
	}
	if d.Group != CN {
		text += " " + string(d.Group)
	}
	return text
}

var (
	numberForm = regexp.MustCompile(`^([0-9]+)(.*)$`)
	suffixes   = regexp.MustCompile(`[\s/-]+`)
	// known are the suffixes of the standard's own kind; makers have many more.
	known = map[string]func(*Designation){
		"RS": sealed("RS"), "2RS": sealed("2RS"), "Z": sealed("Z"), "ZZ": sealed("ZZ"), "2Z": sealed("2Z"),
		"C2": group(C2), "CN": group(CN), "C0": group(CN), "C3": group(C3),
	}
)

func sealed(s string) func(*Designation) { return func(d *Designation) { d.Seals = s } }
func group(g Group) func(*Designation)   { return func(d *Designation) { d.Group = g } }

// Read takes a designation apart: 6206, 6206-2RS, 6206 C3, 6206-ZZ/C3.
func Read(text string) (Designation, error) {
	const want = "a deep groove ball bearing's number with no more than seals and clearance, such as 6206, 6206-2RS or 6206 C3"
	m := numberForm.FindStringSubmatch(strings.ToUpper(strings.TrimSpace(text)))
	if m == nil {
		return Designation{}, refuse("bearing", quote(text), want)
	}
	if len(m[1]) != 4 {
		return Designation{}, refuse("number of the bearing", quote(m[1]), "four figures of the 60, 62 or 63 series, such as 6206")
	}
	d := Designation{Series: m[1][:2], Code: m[1][2:], Group: CN}
	if _, ok := find(d); !ok {
		return Designation{}, unknown(d)
	}
	seen := map[bool]bool{}
	for _, s := range suffixes.Split(m[2], -1) {
		if s == "" {
			continue
		}
		clearance := strings.HasPrefix(s, "C")
		set, ok := known[s]
		switch {
		case !ok && clearance:
			return Designation{}, refuse("clearance group of "+quote(text), quote(s), "C2, CN or C3, the groups of the table")
		case !ok:
			return Designation{}, refuse("suffix of "+quote(text), quote(s), "RS, 2RS, Z, ZZ or 2Z for seals, C2 or C3 for clearance; leave a maker's own suffix out if it changes neither")
		case seen[clearance]:
			return Designation{}, refuse("suffix of "+quote(text), quote(s), "given once: one kind of seal, one clearance group")
		}
		seen[clearance] = true
		set(&d)
	}
	return d, nil
}

// unknown says whether it is the series or the bore that the table does not hold.
func unknown(d Designation) error {
	for _, r := range dimensions() {
		if r.Series == d.Series {
			return refuse("bore figures of "+d.Series+d.Code, quote(d.Code), "00 to 20: bores of 10 to 100 mm")
		}
	}
	return refuse("series of "+d.Series+d.Code, quote(d.Series), "60, 62 or 63; give the three sizes of another bearing by hand")
}

// Bearing is what a designation stands for.
type Bearing struct {
	Designation
	Bore, Outside, Width q.Length // nominal
	Source               string
	Grade                basis.Grade
}

// Of returns the sizes of a bearing by its designation.
//
//   - Holds for: deep groove ball bearings of the 60, 62 and 63 series, bore 10 to 100 mm, open, shielded or sealed.
//   - Beyond: refused by name.
//   - Source: ISO 15, through calc/rolling/SOURCES.md; a row from memory is noted.
func Of(text string) (Bearing, []basis.Note, error) {
	d, err := Read(text)
	if err != nil {
		return Bearing{}, nil, err
	}
	b, _ := find(d)
	b.Designation = d
	if !b.Grade.Weak() {
		return b, nil, nil
	}
	return b, []basis.Note{{Says: "the sizes of " + d.Series + d.Code + " are not read but remembered: gauge the bearing", Source: b.Source, Grade: b.Grade}}, nil
}

func find(d Designation) (Bearing, bool) {
	for _, r := range dimensions() {
		if r.Series == d.Series && r.Code == d.Code {
			return r, true
		}
	}
	return Bearing{}, false
}

func quote(s string) string { return "'" + strings.TrimSpace(s) + "'" }
