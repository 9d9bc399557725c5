package main

import (
	"io"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
)

func cutsCommand() *cobra.Command {
	var format string
	cmd := &cobra.Command{
		Use:   "cuts [NAME]",
		Short: "List the cuts, or show one",
		Long: `cuts lists every cut of the catalogue; with a name it shows what is known of
that cut: its doneness, rest, wrap and places on the grate, and where the
figures come from. Names that cooks use are taken too, and one that several
cuts share lists them.`,
		Example: "  cookday cuts\n  cookday cuts brisket",
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) > 1 {
				return usage("%s: %q is one argument too many; name one cut", cmd.CommandPath(), args[1])
			}
			return nil
		},
		ValidArgsFunction: completeCuts,
		RunE:              func(cmd *cobra.Command, args []string) error { return showCuts(cmd.OutOrStdout(), format, args) },
	}
	cmd.Flags().StringVarP(&format, "format", "f", formatText, "`format`: text or json")
	complete(cmd, "format", formatText, formatJSON)
	return cmd
}

// showCuts prints all cuts, or those that are named.
func showCuts(out io.Writer, format string, names []string) error {
	if err := oneOf("--format", format, formatText, formatJSON); err != nil {
		return err
	}
	columns, _ := terminal(out)
	if len(names) == 0 {
		all := schedule.Cuts()
		return emit(out, "", func(w io.Writer) error {
			if format == formatJSON {
				return writeJSON(w, all)
			}
			return listCuts(w, all.Cuts, columns)
		})
	}
	found, err := schedule.FindCuts(names[0])
	if err != nil {
		return err
	}
	return emit(out, "", func(w io.Writer) error {
		switch {
		case len(found) > 1 && format == formatJSON:
			return writeJSON(w, schedule.Catalogue{Version: schedule.Cuts().Version, Cuts: found})
		case len(found) > 1:
			return listCuts(w, found, columns)
		case format == formatJSON:
			return writeJSON(w, found[0])
		}
		return writeCut(w, found[0], columns)
	})
}

// completeCuts offers the names of the catalogue to the shell; only when it asks,
// for the catalogue takes a while to load.
func completeCuts(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
	var names []cobra.Completion
	for _, c := range schedule.Cuts().Cuts {
		names = append(names, cobra.CompletionWithDesc(c.Name, c.Title))
	}
	return names, cobra.ShellCompDirectiveNoFileComp
}
