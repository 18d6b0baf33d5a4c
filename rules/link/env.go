package link

import (
	"slices"
	"strings"

	"wornfit/rules/fault"
	"wornfit/rules/lang"
)

// Fit is the joint of a static purpose: the finished fit itself.
const Fit = "fit"

// env is one use of a file in an option: what its private names are.
type env struct {
	part  *Part
	full  string // before defines, picks and steps: hub/bush. or, of a hold, its joint's bush.
	nums  string // before numbers: hub/bush. or hold/press., one number however many joints use it
	joint *joint // of a hold: what it is on
	names map[string]private
}

// joint is what a hold is on.
type joint struct {
	name  string
	owner *env   // nil: the finished fit, whose fields are the seam's
	decl  *Joint // nil with owner
}

// private is a name of a file: where it stands in the file's lists.
type private struct {
	kind privateKind
	at   int
}

type privateKind uint8

const (
	isNumber privateKind = iota
	isPick
	isDim
	isDefine
	isJoint
)

func newEnv(p *Part, j *joint) *env {
	e := &env{part: p, joint: j, nums: fileName(p) + "."}
	e.full = e.nums
	if j != nil {
		e.full = j.name + "."
		if p.Side == Lock {
			e.full = j.name + ".lock."
		}
	}
	if e.names = p.names; e.names == nil {
		e.names = p.listed()
	}
	return e
}

// Index keeps where each private name of a part stands, and what bars it. It is
// called once the part is whole; a part without is looked through at every link.
func (p *Part) Index() { p.names, p.bars = p.listed(), p.barred() }

func (p *Part) listed() map[string]private {
	names := make(map[string]private, len(p.Numbers)+len(p.Picks)+len(p.Choose)+len(p.Defines)+len(p.Joints))
	for i := range p.Numbers {
		names[p.Numbers[i].ID] = private{isNumber, i}
	}
	for i := range p.Picks {
		names[p.Picks[i].ID] = private{isPick, i}
	}
	for i := range p.Choose {
		names[p.Choose[i].ID] = private{isDim, i}
	}
	for i := range p.Joints {
		names[p.Joints[i].Name] = private{isJoint, i}
	}
	for i := range p.Defines { // last: a treatment may define a name like its joint's
		names[p.Defines[i].ID] = private{isDefine, i}
	}
	return names
}

// fileName is the name of a part file in overlays and slots: hub/bush.
func fileName(p *Part) string {
	if p.Side == Shared {
		return p.ID
	}
	return p.Side.String() + "/" + p.ID
}

// said is the id of a rule or step of the file, told apart by its joint when
// the file is a hold.
func (e *env) said(id string) string {
	if e.joint != nil {
		return e.joint.name + "." + id
	}
	return id
}

// dimID is the id of a dimension of the file: bare, but of a hold with its
// joint in front, since two joints may be heated to two temperatures.
func (e *env) dimID(id string) string { return e.said(id) }

func (e *env) jointName() string {
	if e.joint == nil {
		return ""
	}
	return e.joint.name
}

// find looks a private name up.
func (e *env) find(name string, kind privateKind) (int, bool) {
	p, ok := e.names[name]
	return p.at, ok && p.kind == kind
}

// cut splits a dotted name at its last dot: shaft.material.E to shaft.material and E.
func cut(name string) (base, last string, ok bool) {
	i := strings.LastIndexByte(name, '.')
	if i < 0 {
		return "", name, false
	}
	return name[:i], name[i+1:], true
}

// tableOf is the table a pick takes its rows from: machines, of shop.machines.
func tableOf(from string) string {
	_, last, _ := cut(from)
	return last
}

// fitFields says what a hold of the finished fit sees as its joint. The sizes
// are those of the tightest the two surfaces allow; the four others tell the
// loosest.
var fitFields = map[string]string{
	"inner_size": "shaft_large", "outer_size": "bore_small",
	"inner_large": "shaft_large", "inner_small": "shaft_small",
	"outer_large": "bore_large", "outer_small": "bore_small",
	"inner_give": "shaft_give", "outer_give": "bore_give", "fitted_give": "shaft_give",
	"inner_hoop": "shaft_hoop", "outer_hoop": "bore_hoop",
	"inner_expansion": "shaft_expansion", "outer_expansion": "bore_expansion",
	"inner_material": "shaft_face", "outer_material": "bore_face",
	"length": "seat_length", "torque": "seat_torque", "thrust": "seat_thrust",
}

// standIn is the field a joint means when it does not state one: a surface of
// one size is as large as it is small, a part is put together as it stays.
var standIn = map[string]string{
	"inner_large": "inner_size", "inner_small": "inner_size",
	"outer_large": "outer_size", "outer_small": "outer_size",
	"fitted_give": "inner_give",
}

// standInColumn is the same for what the material of a side tells.
var standInColumn = map[string]string{
	"inner_expansion": "inner_material.expansion", "outer_expansion": "outer_material.expansion",
}

func seamHas(names []SeamName, name string) bool {
	for i := range names {
		if names[i].Name == name {
			return true
		}
	}
	return false
}

// dimOf is the type a define was checked as.
func (e *env) typeOf(d *Define) lang.Type {
	if t, ok := e.part.Types[d.ID]; ok {
		return t
	}
	if d.Is != nil {
		return d.Is.Type
	}
	return lang.Type{Kind: lang.Row}
}

// at is the file as a place.
func (e *env) at() fault.Place { return fault.Place{File: e.part.File} }

func sorted(names []string) []string {
	slices.Sort(names)
	return names
}
