package main

import (
	"github.com/spf13/cobra"

	"wornfit/knowledge"
)

// takes checks how many arguments a command gets.
func takes(what string, least, most int) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		switch {
		case len(args) < least:
			return notUnderstood("for example:"+cmd.Example, "%s wants %s", cmd.CommandPath(), what)
		case most >= 0 && len(args) > most:
			return notUnderstood("for example:"+cmd.Example, "%s takes no %q", cmd.CommandPath(), args[most])
		}
		return nil
	}
}

func completeCase(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return []string{"yaml", "yml"}, cobra.ShellCompDirectiveFilterFileExt
}

// completeOption completes the case file, then trade names.
func completeOption(cmd *cobra.Command, args []string, start string) ([]string, cobra.ShellCompDirective) {
	if len(args) == 0 {
		return completeCase(cmd, args, start)
	}
	base, list := knowledge.Load()
	if len(list) > 0 {
		return nil, cobra.ShellCompDirectiveError
	}
	var names []string
	for _, n := range base.Names {
		names = append(names, n.ID)
	}
	return names, cobra.ShellCompDirectiveNoFileComp
}
