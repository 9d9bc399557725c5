package main

import (
	"io"
	"strings"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule/cut"
)

func cutsCommand() *cobra.Command {
	var format string
	cmd := &cobra.Command{
		Use:   "cuts [NAME]",
		Short: "List the cuts, or show one",
		Long: `cuts lists every cut of the catalogue; with a name it shows what is known of
that cut: its doneness, rest, wrap and places on the grate, and where the
figures come from.`,
		Example: "  cookday cuts\n  cookday cuts brisket",
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) > 1 {
				return usage("%s: %q is one argument too many; name one cut", cmd.CommandPath(), args[1])
			}
			return nil
		},
		ValidArgsFunction: completeCuts,
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := oneOf("--format", format, formatText, formatJSON); err != nil {
				return err
			}
			chosen, err := chosenCuts(args)
			if err != nil {
				return err
			}
			out := cmd.OutOrStdout()
			columns, _ := terminal(out)
			return emit(out, "", func(w io.Writer) error {
				switch {
				case format == formatJSON && len(args) == 1:
					return writeJSON(w, describeCut(chosen[0]))
				case format == formatJSON:
					return writeJSON(w, describeCuts(chosen))
				case len(args) == 1:
					return writeCut(w, chosen[0], columns)
				}
				return listCuts(w, chosen, columns)
			})
		},
	}
	cmd.Flags().StringVarP(&format, "format", "f", formatText, "`format`: text or json")
	complete(cmd, "format", formatText, formatJSON)
	return cmd
}

// chosenCuts is the cut of that name, or all of them.
func chosenCuts(args []string) ([]cut.Cut, error) {
	if len(args) == 0 {
		return cut.All(), nil
	}
	c, ok := cut.Find(strings.ToLower(args[0]))
	if !ok {
		return nil, usage("%s: is no cut of the catalogue; the nearest are %s", args[0], strings.Join(cut.Nearest(args[0], 3), ", "))
	}
	return []cut.Cut{c}, nil
}

// completeCuts offers the names of the catalogue to the shell; only when it asks,
// for the catalogue takes a while to load.
func completeCuts(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
	var names []cobra.Completion
	for _, c := range cut.All() {
		names = append(names, cobra.CompletionWithDesc(c.Name, c.Title))
	}
	return names, cobra.ShellCompDirectiveNoFileComp
}
