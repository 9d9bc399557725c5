package main

import (
	"strings"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
)

// files offers the files with one of the endings, at the places of the arguments; what is
// behind them is offered by nothing.
func files(endings ...[]string) cobra.CompletionFunc {
	return func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
		if len(args) >= len(endings) {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		return endings[len(args)], cobra.ShellCompDirectiveFilterFileExt
	}
}

var (
	dayFiles = []string{"yaml", "yml", "json"}
	logFiles = []string{"csv", "json"}
)

// completeNote offers a log, then the dishes of its day and what may be noted of them.
func completeNote(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	if len(args) == 0 {
		return logFiles[:1], cobra.ShellCompDirectiveFilterFileExt
	}
	words := []string{"undo"}
	for _, f := range schedule.EntryForms() {
		if len(args) == 1 || f.OfDish {
			words = append(words, string(f.Kind)+"\t"+f.Kind.Means())
		}
	}
	day, _ := cmd.Flags().GetString("day")
	if file, err := dayOf(day, args[0]); err == nil && len(args) == 1 {
		if p, err := readDay(cmd, file, ""); err == nil {
			for _, d := range p.Dishes {
				words = append(words, d.ID+"\t"+d.Name)
			}
		}
	}
	var offered []string
	for _, w := range words {
		if strings.HasPrefix(w, begun) {
			offered = append(offered, w)
		}
	}
	return offered, cobra.ShellCompDirectiveNoFileComp
}
