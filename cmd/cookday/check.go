package main

import (
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
)

func checkCommand() *cobra.Command {
	mend := false
	cmd := &cobra.Command{
		Use:   "check FILE",
		Short: "Look for faults in a request or a plan",
		Long: `check reads a request or a plan (- for standard input; it sees which of the two
it is) and lists every fault with its path, one per line. What is certainly a
slip is shown as it would be right; --mend writes it into the file. A plan is
checked independently of the planner. Exit code 2 says that there are faults.`,
		Example: `  cookday check party.yaml
  cookday check party.yaml --mend
  cookday plan party.yaml --format json | cookday check -`,
		Args:              operands("FILE"),
		ValidArgsFunction: files(dayFiles),
		RunE: func(cmd *cobra.Command, args []string) error {
			in, err := readSource(args[0], cmd.InOrStdin())
			if err != nil {
				return err
			}
			kind := "request"
			if mend && !in.isPlan() {
				if in, err = mendFile(cmd, in); err != nil {
					return err
				}
			}
			if in.isPlan() {
				kind, err = "plan", checkPlan(in)
			} else {
				_, err = schedule.Understand(in.data, homeNow(cmd))
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
	cmd.Flags().BoolVar(&mend, "mend", false, "write what is certainly meant into the file")
	return cmd
}

// homeNow is the time now in the zone that this machine lives in, where it says so.
func homeNow(cmd *cobra.Command) time.Time {
	now := clockNow(cmd)
	if loc, err := time.LoadLocation(machineZone()); err == nil && machineZone() != "" {
		return now.In(loc)
	}
	return now
}

// mendFile writes what is certainly meant into a file.
func mendFile(cmd *cobra.Command, in source) (source, error) {
	mended, certain := schedule.MendOn(in.data, homeNow(cmd))
	if !certain {
		return in, nil
	}
	in.data = mended
	if in.name == "standard input" {
		_, err := cmd.OutOrStdout().Write(mended)
		return in, err
	}
	if err := os.WriteFile(in.name, mended, 0o644); err != nil {
		return in, fileTrouble(in.name, err)
	}
	_, err := fmt.Fprintf(cmd.ErrOrStderr(), "%s: written anew, with what was certainly meant\n", in.name)
	return in, err
}

// readRequest reads a request on this machine's day. What is wrong with it is told with what
// would be right.
func readRequest(cmd *cobra.Command, in source, understand func([]byte, time.Time) (schedule.Request, error)) (schedule.Request, error) {
	r, err := understand(in.data, homeNow(cmd))
	if err == nil {
		return r, nil
	}
	code := report(cmd.ErrOrStderr(), inFile(in.name, err))
	sayMended(cmd, in)
	return r, &toldError{code}
}

// sayMended shows the parts of a request that are certainly meant otherwise, set right.
// A part that would still be refused is not shown.
func sayMended(cmd *cobra.Command, in source) {
	mended, certain := schedule.MendOn(in.data, homeNow(cmd))
	if !certain {
		return
	}
	wrong := faultyLines(cmd, mended)
	if len(wrong) == 0 {
		fmt.Fprintf(cmd.ErrOrStderr(), "This would be right:\n%s\n", strings.TrimRight(string(mended), "\n"))
		if in.name != "standard input" {
			fmt.Fprintf(cmd.ErrOrStderr(), "cookday check %s --mend writes it into the file.\n", in.name)
		}
		return
	}
	was, is := strings.Split(string(in.data), "\n"), strings.Split(string(mended), "\n")
	var right []string
	shown := 0 // lines up to here
	for k := range is {
		if slices.Contains(was, is[k]) {
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
		fmt.Fprintf(cmd.ErrOrStderr(), "These lines would be right; the others above still need you:\n%s\n", strings.Join(right, "\n"))
	}
}

// faultyLines are the lines of a request that have faults, from 1.
func faultyLines(cmd *cobra.Command, request []byte) (lines []int) {
	_, err := schedule.ReadOn(request, homeNow(cmd))
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
