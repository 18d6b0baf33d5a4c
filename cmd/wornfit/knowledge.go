package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"wornfit/cmd/wornfit/render"
	"wornfit/knowledge"
	"wornfit/rules"
	"wornfit/rules/fault"
)

func newKnowledge(w world) *cobra.Command {
	cmd := &cobra.Command{
		Use:     "knowledge",
		Short:   "the rule files: check them",
		Long:    "knowledge looks after the rule files that a machinist may edit.",
		Example: "  wornfit knowledge check",
		Args:    cobra.ArbitraryArgs,
	}
	cmd.RunE = group(cmd)
	cmd.AddCommand(newCheck(w))
	return cmd
}

func newCheck(w world) *cobra.Command {
	f := &flags{}
	cmd := &cobra.Command{
		Use:   "check [DIR]",
		Short: "tell every fault of the rule files in one run",
		Long: `check reads the shipped rule files, or those in DIR, and tells every fault with
its place: units, names, sources, rules that are never or always kept, rules
that contradict each other, parts that cannot be joined. A DIR that holds a
seam.yaml is a whole rule base; any other is laid over the shipped one.`,
		Example: "  wornfit knowledge check",
		Args:    takes("at most one folder", 0, 1),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return nil, cobra.ShellCompDirectiveFilterDirs
		},
		RunE: func(_ *cobra.Command, args []string) error { return runCheck(w, f, args) },
	}
	f.addLook(cmd)
	return cmd
}

func runCheck(w world, f *flags, args []string) error {
	base, list, dirs, err := f.check(args)
	if err != nil {
		return err
	}
	what := "the shipped knowledge"
	if len(dirs) > 0 {
		what = strings.Join(dirs, " and ")
	}
	if f.json {
		if err := f.printJSON(w, checked{base.Hash, base.Layers, base.Numbers.ByGrade(), told(list), told(base.Remarks())}); err != nil {
			return err
		}
		if len(list) > 0 {
			return exit(exitUnknown)
		}
		return nil
	}
	if len(list) > 0 {
		return faults(w, what, list, ruleLines(w, dirs))
	}
	p := render.NewPage(f.look(w))
	p.Para(0, fmt.Sprintf("No fault in %s: %s, %s. Hash %s.", what, count(len(base.Input.Parts), "part file"), count(len(base.Names), "trade name"), base.Hash))
	remarks(p, base.Remarks())
	p.Blank()
	p.Para(0, "Numbers: "+base.Numbers.String()+".")
	_, err = fmt.Fprint(w.out, p.String())
	return err
}

// remarks tells what is no fault, each remedy once behind those it is for.
func remarks(p *render.Page, list fault.List) {
	if len(list) == 0 {
		return
	}
	p.Head("Worth a look, though no fault")
	for i, x := range list {
		p.Item(2, "-", x.At.String()+": "+x.Says)
		if x.Remedy != "" && (i == len(list)-1 || list[i+1].Remedy != x.Remedy) {
			p.Para(4, x.Remedy)
		}
	}
}

// check reads what is to be checked; dirs are the folders its faults may stand in.
func (f *flags) check(args []string) (*rules.Base, fault.List, []string, error) {
	for _, dir := range append(append([]string{}, args...), f.knowledge...) {
		if err := folder(dir); err != nil {
			return nil, nil, nil, err
		}
	}
	if len(args) == 1 && whole(args[0]) {
		if len(f.knowledge) > 0 {
			return nil, nil, nil, notUnderstood("leave out one of the two", "%s is a whole rule base; nothing can be laid over it here", args[0])
		}
		base, list := knowledge.CheckFrom(os.DirFS(args[0]), args[0])
		return base, list, args, nil
	}
	dirs := append(append([]string{}, args...), f.knowledge...)
	base, list := knowledge.Check(dirs...)
	return base, list, dirs, nil
}

func whole(dir string) bool {
	_, err := os.Stat(filepath.Join(dir, "seam.yaml"))
	return err == nil
}

// checked is the JSON of knowledge check.
type checked struct {
	Hash    string         `json:"hash"`
	Layers  []string       `json:"layers"`
	Numbers map[string]int `json:"numbers"`
	Faults  []placed       `json:"faults"`
	Remarks []placed       `json:"remarks"`
}

type placed struct {
	File   string `json:"file"`
	Line   int    `json:"line"`
	Column int    `json:"column"`
	Key    string `json:"key"`
	Says   string `json:"says"`
	Remedy string `json:"remedy"`
}

func told(list fault.List) []placed {
	var out []placed
	for _, f := range list {
		out = append(out, placed{f.At.File, f.At.Line, f.At.Column, f.Key, f.Says, f.Remedy})
	}
	return out
}

// ruleLines finds the lines of a rule file in one of the folders.
func ruleLines(w world, dirs []string) func(string) []string {
	return func(file string) []string {
		for _, dir := range append([]string{"."}, dirs...) {
			for _, name := range []string{file, strings.TrimPrefix(file, dir+"/")} {
				if data, err := w.read(filepath.Join(dir, name)); err == nil {
					return strings.Split(string(data), "\n")
				}
			}
		}
		return nil
	}
}

func versionLine() string {
	return "wornfit, with knowledge " + knowledge.Version + "\n"
}
