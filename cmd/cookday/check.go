package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
)

func checkCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "check FILE",
		Short: "Look for faults in a request or a plan",
		Long: `check reads a request or a plan (- for standard input; it sees which of the two
it is) and lists every fault with its path, one a line. A plan is looked at
without the code that made it. Exit code 2 says that there are faults.`,
		Example: `  cookday check party.yaml
  cookday plan party.yaml --format json | cookday check -`,
		Args: operands("FILE"),
		RunE: func(cmd *cobra.Command, args []string) error {
			in, err := readSource(args[0], cmd.InOrStdin())
			if err != nil {
				return err
			}
			kind := "request"
			if in.isPlan() {
				kind, err = "plan", checkPlan(in)
			} else {
				_, err = schedule.Read(in.data)
			}
			if err != nil {
				return inFile(in.name, err)
			}
			_, err = fmt.Fprintf(cmd.OutOrStdout(), "%s: no faults found in this %s\n", in.name, kind)
			return err
		},
	}
}

// checkPlan looks at the form of a plan, then at whether it is sound.
func checkPlan(in source) error {
	p, err := schedule.ReadPlan(in.data)
	if err != nil {
		return err
	}
	if faults := check.Plan(p); len(faults) > 0 {
		return &schedule.InputError{Faults: faults}
	}
	return nil
}
