package link

import (
	"fmt"
	"strings"

	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/tape"
)

// name gives the node a name stands for in one use of a file: the file's own, one
// of the vocabulary (no file may take a word it begins with), of its joint, or of
// the seam.
func (lw *lowering) name(e *env, name string) (tape.Node, error) {
	for _, look := range lookups {
		if n, ok, err := look(lw, e, name); ok || err != nil {
			return n, err
		}
	}
	return 0, fmt.Errorf("%s is not known in %s; %s", name, fileName(e.part), lw.l.near(e, name))
}

// lookups are the places a name is looked for, in order. It is filled when the
// program starts, since they call name in turn.
var lookups []func(*lowering, *env, string) (tape.Node, bool, error)

func init() {
	lookups = []func(*lowering, *env, string) (tape.Node, bool, error){
		(*lowering).ends, (*lowering).own, (*lowering).given, (*lowering).column, (*lowering).jointField,
		(*lowering).holdGives, (*lowering).acrossSeam, (*lowering).totals,
	}
}

// ends is low(name) and high(name) of a number.
func (lw *lowering) ends(e *env, name string) (tape.Node, bool, error) {
	end, rest, ok := strings.Cut(name, "(")
	if !ok {
		return 0, false, nil
	}
	rest = strings.TrimSuffix(rest, ")")
	at, ok := e.find(rest, isNumber)
	if !ok {
		return 0, true, fmt.Errorf("%s is no number of %s; low and high take a number written as a range", rest, fileName(e.part))
	}
	if n := &e.part.Numbers[at]; n.Low == n.High {
		end = "" // both ends are the number itself
	}
	return lw.number(e, at, end), true, nil
}

// own is a number, a size or a define of the file.
func (lw *lowering) own(e *env, name string) (tape.Node, bool, error) {
	p, ok := e.names[name]
	if !ok {
		return 0, false, nil
	}
	switch p.kind {
	case isNumber:
		return lw.number(e, p.at, ""), true, nil
	case isDim:
		n, err := lw.size(e, name)
		return n, true, err
	case isDefine:
		n, err := lw.define(e, &e.part.Defines[p.at])
		return n, true, err
	}
	return 0, true, fmt.Errorf("%s is a row or a joint, not a number; name a column of it", name)
}

// size is the true size of a dimension.
func (lw *lowering) size(e *env, id string) (tape.Node, error) {
	if lw.pick != nil {
		return 0, fmt.Errorf("a pick is made before any size is known; %s is a size", id)
	}
	full := e.dimID(id)
	for i := range lw.l.opt.Dims {
		if lw.l.opt.Dims[i].ID == full {
			return lw.l.opt.Dims[i].Value, nil
		}
	}
	return 0, fmt.Errorf("%s is not chosen in this option", full)
}

func (lw *lowering) define(e *env, d *Define) (tape.Node, error) {
	if d.Is == nil {
		return 0, fmt.Errorf("%s stands for a row, not a number; name a column of it", d.ID)
	}
	return lw.once(asked{e, d.ID}, e.full+d.ID, d.At, func() (tape.Node, error) { return lw.try(e, d.Is) })
}

// column is a column of a row: of a pick, of a row of the case, or of a name
// that stands for one of them.
func (lw *lowering) column(e *env, name string) (tape.Node, bool, error) {
	base, col, ok := cut(name)
	if !ok {
		return 0, false, nil
	}
	if lw.pick != nil && base == "it" {
		n, err := lw.slotOf(row{name: "it", table: tableOf(lw.pick.From), pick: "it"}, col)
		return n, true, err
	}
	r, ok, err := lw.row(e, base, 0)
	if !ok || err != nil {
		return 0, ok, err
	}
	n, err := lw.slotOf(r, col)
	return n, true, err
}

// row is a row of a table under its full name.
type row struct {
	name  string // hub/bush.borer, shaft.material
	table string
	pick  string // the same when it is a pick's
}

func (lw *lowering) slotOf(r row, col string) (tape.Node, error) {
	c, ok := lw.l.in.column(r.table, col)
	if !ok {
		return 0, fmt.Errorf("the table %s has no column %s; %s", r.table, col, fault.DidYouMean(col, lw.l.in.columnNames(r.table)))
	}
	s := Ask{Name: r.name + "." + col, Kind: GivenSlot, Row: r.name, Table: r.table, Column: col}
	if r.pick != "" {
		s.Kind, s.Pick, s.Row = PickSlot, r.pick, ""
	}
	return lw.slot(s, c.Type), nil
}

// aliases is how many names may stand for one another before it is a circle.
const aliases = 16

// row finds the row a name stands for, through aliases, joints and the seam.
func (lw *lowering) row(e *env, base string, depth int) (row, bool, error) {
	if depth > aliases {
		return row{}, true, fmt.Errorf("%s stands for itself; name a row of a table", base)
	}
	if at, ok := e.find(base, isPick); ok {
		full := e.full + base
		return row{name: full, table: tableOf(e.part.Picks[at].From), pick: full}, true, nil
	}
	if at, ok := e.find(base, isDefine); ok {
		d := &e.part.Defines[at]
		if d.Is != nil {
			return row{}, true, fmt.Errorf("%s is a number, not a row; it has no columns", base)
		}
		return lw.row(e, d.Row, depth+1)
	}
	if field, ok := strings.CutPrefix(base, "joint."); ok && e.joint != nil {
		return lw.jointRow(e, field, depth+1)
	}
	if p := lw.l.across(base); p != nil && p != e {
		return lw.row(p, base, depth+1)
	}
	if t, ok := lw.l.in.Given[base]; ok && t.Kind == lang.Row {
		return row{name: base, table: t.Table}, true, nil
	}
	return row{}, false, nil
}

func (lw *lowering) jointRow(e *env, field string, depth int) (row, bool, error) {
	j := e.joint
	if j.owner == nil {
		p := lw.l.across(fitFields[field])
		if p == nil {
			return row{}, false, nil
		}
		return lw.row(p, fitFields[field], depth)
	}
	name, ok := j.decl.Rows[field]
	if !ok {
		return row{}, false, nil
	}
	return lw.row(j.owner, name, depth)
}

// jointField is what a hold sees of its joint.
func (lw *lowering) jointField(e *env, name string) (tape.Node, bool, error) {
	field, ok := strings.CutPrefix(name, "joint.")
	if !ok || e.joint == nil {
		return 0, false, nil
	}
	j := e.joint
	if j.owner == nil {
		from, ok := fitFields[field]
		if !ok {
			return 0, true, fmt.Errorf("the finished fit has no %s", name)
		}
		n, ok, err := lw.acrossSeam(e, from)
		if err == nil && !ok {
			err = fmt.Errorf("%s asks for %s, which is %s of the finished fit, and nothing defines it", fileName(e.part), name, from)
		}
		return n, true, err
	}
	if x := j.decl.Fields[field]; x != nil {
		n, err := lw.once(asked{j.owner, j.name + "." + field}, "joint "+j.name+"."+field, x.At,
			func() (tape.Node, error) { return lw.try(j.owner, x) })
		return n, true, err
	}
	if other, ok := standIn[field]; ok {
		return lw.jointField(e, "joint."+other)
	}
	if other, ok := standInColumn[field]; ok {
		return lw.column(e, "joint."+other)
	}
	return 0, true, fmt.Errorf("%s asks for %s, which %s does not state for its joint %s", fileName(e.part), name, fileName(j.owner.part), j.name)
}

// holdGives is what a hold tells of its joint: bush.pressure. The treatment
// sees its own joints, everybody sees the finished fit.
func (lw *lowering) holdGives(e *env, name string) (tape.Node, bool, error) {
	j, field, ok := strings.Cut(name, ".")
	if !ok || !seamHas(lw.l.in.Seam.Hold, field) {
		return 0, false, nil
	}
	_, mine := e.find(j, isJoint)
	h := lw.l.holds[j]
	if h == nil || !mine && j != Fit {
		return 0, false, nil
	}
	return lw.defined(e, h, field)
}

// acrossSeam is a name that the other files of the option define.
func (lw *lowering) acrossSeam(e *env, name string) (tape.Node, bool, error) {
	from := lw.l.across(name)
	if from == nil {
		return 0, false, nil
	}
	return lw.defined(e, from, name)
}

func (lw *lowering) defined(asks, from *env, name string) (tape.Node, bool, error) {
	at, ok := from.find(name, isDefine)
	if !ok {
		return 0, true, fmt.Errorf("%s asks for %s, which %s does not define", fileName(asks.part), name, fileName(from.part))
	}
	n, err := lw.define(from, &from.part.Defines[at])
	return n, true, err
}

// across is the file that defines a name of the seam, nil for any other name.
func (l *linker) across(name string) *env {
	switch {
	case seamHas(l.in.Seam.Shaft, name):
		return l.shaft
	case seamHas(l.in.Seam.Hub, name):
		return l.hub
	case seamHas(l.in.Seam.Purpose, name):
		return l.purpose
	}
	return nil
}

// totals is what the criteria see: total.hours, joined.risk.
func (lw *lowering) totals(e *env, name string) (tape.Node, bool, error) {
	if e != lw.l.scoring {
		return 0, false, nil
	}
	n, ok := lw.l.sums[name]
	return n, ok, nil
}

// given is a name of the vocabulary, or a word that names a part of the option.
func (lw *lowering) given(e *env, name string) (tape.Node, bool, error) {
	if strings.HasPrefix(name, "option.") {
		n, err := lw.word(e, name)
		return n, true, err
	}
	t, ok := lw.l.in.Given[name]
	if !ok || t.Kind == lang.Row {
		return 0, false, nil
	}
	return lw.slot(Ask{Name: name, Kind: GivenSlot}, t), true, nil
}

// near is what a name not known most likely meant.
func (l *linker) near(e *env, name string) string {
	var all []string
	for n := range e.names {
		all = append(all, n)
	}
	for n := range l.in.Given {
		all = append(all, n)
	}
	if near := fault.Nearest(name, sorted(all)); near != "" {
		return "did you mean " + near + "?"
	}
	return "define it, or name something of the vocabulary"
}
