package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
)

func checkCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "check FILE",
		Short: "Look for faults in a request or a plan",
		Long: `check reads a request or a plan (- for standard input; it sees which of the two
it is) and lists every fault with its path, one per line. What is certainly a
slip is shown as it would be right. A plan is checked independently of the
planner. Exit code 2 says that there are faults.`,
		Example: `  cookday check party.yaml
  cookday plan party.yaml --format json | cookday check -`,
		Args:              operands("FILE"),
		ValidArgsFunction: files(dayFiles),
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
				code := report(cmd.ErrOrStderr(), inFile(in.name, err))
				if kind == "request" {
					sayMended(cmd, in)
				}
				return &toldError{code}
			}
			_, err = fmt.Fprintf(cmd.OutOrStdout(), "%s: no faults found in this %s\n", in.name, kind)
			return err
		},
	}
}

// sayMended shows the parts of a request that are certainly meant otherwise, set right.
// A part that would still be refused is not shown.
func sayMended(cmd *cobra.Command, in source) {
	mended, certain := schedule.Mend(in.data)
	if !certain {
		return
	}
	was, is := strings.Split(string(in.data), "\n"), strings.Split(string(mended), "\n")
	wrong := faultyLines(mended)
	var right []string
	shown := 0 // lines up to here
	for k := range is {
		if was[k] == is[k] {
			continue
		}
		from, to := blockAbout(is, k)
		refused := slices.ContainsFunc(wrong, func(line int) bool { return from < line && line <= to })
		if from = max(from, shown); from < to && !refused {
			right = append(right, is[from:to]...)
		}
		shown = max(to, shown)
	}
	if len(right) > 0 {
		fmt.Fprintf(cmd.ErrOrStderr(), "This would be right:\n%s\n", strings.Join(right, "\n"))
	}
}

// faultyLines are the lines of a request that have faults, from 1.
func faultyLines(request []byte) (lines []int) {
	_, err := schedule.Read(request)
	var refused *schedule.InputError
	if errors.As(err, &refused) {
		for _, f := range refused.Faults {
			lines = append(lines, f.Line)
		}
	}
	return lines
}

// blockAbout are the lines of the item or field that a line belongs to.
func blockAbout(lines []string, at int) (from, to int) {
	begins := func(line string) bool {
		return line != "" && line[0] != ' ' && line[0] != '#' || strings.HasPrefix(strings.TrimLeft(line, " "), "- ")
	}
	from, to = at, at+1
	for from > 0 && !begins(lines[from]) {
		from--
	}
	for to < len(lines) && lines[to] != "" && !begins(lines[to]) {
		to++
	}
	return from, to
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
