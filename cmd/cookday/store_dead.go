package main

import (
	"fmt"
	"maps"
	"slices"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"example.com/cookday/api"
)

func (s *storeFlags) deadCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "dead",
		Short: "List what was to be pushed and was given up, the newest first",
		Long: `dead lists the events that a webhook refused or a way did not take for a day. The
plan is named by its topic, which leads to nothing. Below it stands how many plans
wait for a way that does not answer.`,
		Args: operands(),
		RunE: func(cmd *cobra.Command, _ []string) error {
			f, err := s.open(cmd.Context(), false)
			if err != nil {
				return err
			}
			defer f.Close()
			dead, err := f.DeadLetters(cmd.Context(), api.MostDead)
			if err != nil {
				return err
			}
			w := tabwriter.NewWriter(cmd.OutOrStdout(), 0, 0, 2, ' ', 0)
			fmt.Fprintln(w, "given up\tdue\tway\ttopic\tevent\ttries\twhy")
			for _, d := range dead {
				fmt.Fprintf(w, "%s\t%s\t%s\t%s\t%s\t%d\t%s\n", minute(d.Buried), minute(d.Due), d.Way, d.Topic, d.Event, d.Tries, d.Fault)
			}
			if err := w.Flush(); err != nil {
				return err
			}
			waiting, err := f.Waiting(cmd.Context())
			for _, way := range slices.Sorted(maps.Keys(waiting)) {
				fmt.Fprintf(cmd.OutOrStdout(), "%d plans wait for %s\n", waiting[way], way)
			}
			return err
		},
	}
}
