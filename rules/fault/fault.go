// Package fault tells what is wrong in a file a person wrote: where, what, and
// what would be right. Faults are collected, so that one run tells all of them.
package fault

import (
	"fmt"
	"slices"
	"strings"
)

// Place is a position in a file; Line and Column count from 1, in characters.
// Width is how many characters the caret underlines; 0 means one.
type Place struct {
	File                string
	Line, Column, Width int
}

func (p Place) String() string {
	if p.Line == 0 {
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
}

// Fault is one thing wrong. Says names the thing and the value; Remedy says
// what to write instead; Also are other places concerned.
type Fault struct {
	At     Place
	Key    string // dotted path of keys in the file, such as parts.arm.outside
	Says   string
	Remedy string
	Also   []Place
}

func (f Fault) Error() string {
	var b strings.Builder
	b.WriteString(f.At.String())
	b.WriteString(": ")
	if f.Key != "" {
		b.WriteString(f.Key + ": ")
	}
	b.WriteString(f.Says)
	if f.Remedy != "" {
		b.WriteString("; " + f.Remedy)
	}
	return b.String()
}

// List is the faults of one or more files.
type List []Fault

// Add appends a fault.
func (l *List) Add(at Place, key, says, remedy string) {
	*l = append(*l, Fault{At: at, Key: key, Says: says, Remedy: remedy})
}

// Sort puts the faults in reading order and drops exact repeats.
func (l *List) Sort() {
	slices.SortStableFunc(*l, func(a, b Fault) int {
		return slices.CompareFunc(key(a), key(b), strings.Compare)
	})
	*l = slices.CompactFunc(*l, func(a, b Fault) bool { return a.Error() == b.Error() })
}

func key(f Fault) []string {
	return []string{f.At.File, fmt.Sprintf("%08d:%08d", f.At.Line, f.At.Column), f.Says}
}

// Err returns the list as an error, or nil when it is empty.
func (l List) Err() error {
	if len(l) == 0 {
		return nil
	}
	return l
}

func (l List) Error() string {
	lines := make([]string, len(l))
	for i, f := range l {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}
