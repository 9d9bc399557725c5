package main

import (
	"io"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

// amountsCommand suggests how much to buy of each cut for a head count.
func amountsCommand() *cobra.Command {
	var format, units string
	var guests schedule.Guests
	cmd := &cobra.Command{
		Use:               "amounts CUT...",
		Short:             "Suggest weights for a head count",
		Example:           "  cookday amounts brisket chicken-spatchcock --adults 16 --children 6",
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: completeCuts,
		RunE: func(cmd *cobra.Command, cuts []string) error {
			if err := oneOf("--format", format, formatText, formatJSON); err != nil {
				return err
			}
			system, err := unit.ParseSystem(units)
			if err != nil {
				return &schedule.InputError{Faults: []schedule.Fault{{Path: "--units", Sentence: err.Error()}}}
			}
			if guests == (schedule.Guests{}) {
				return usage("cookday amounts: how many eat? Add --guests 10, or --adults 8 --children 4")
			}
			amounts, err := schedule.Amounts(guests, cuts)
			if err != nil {
				return err
			}
			out := cmd.OutOrStdout()
			columns, _ := terminal(out)
			return emit(out, "", func(w io.Writer) error {
				if format == formatJSON {
					return writeJSON(w, amounts)
				}
				p := page{columns: columns}
				for _, a := range amounts {
					p.item("- ", a.Text(system))
				}
				_, err := io.WriteString(w, p.String())
				return err
			})
		},
	}
	cmd.Flags().IntVar(&guests.Adults, "adults", 0, "how many `people` eat, children apart")
	cmd.Flags().IntVar(&guests.Adults, "guests", 0, "the same `people` as --adults")
	cmd.Flags().IntVar(&guests.Children, "children", 0, "how many `children` eat; two count as one adult")
	cmd.Flags().StringVar(&units, "units", string(unit.US), "`units`: us or metric")
	cmd.Flags().StringVarP(&format, "format", "f", formatText, "`format`: text or json")
	complete(cmd, "format", formatText, formatJSON)
	complete(cmd, "units", string(unit.US), string(unit.Metric))
	return cmd
}
