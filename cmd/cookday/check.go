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
	mend, guess := false, false
	cmd := &cobra.Command{
		Use:   "check FILE",
		Short: "Look for faults in a request or a plan",
		Long: `check reads a request or a plan (- for standard input; it sees which of the two
it is) and lists every fault with its path, one per line. What is certainly a
slip is shown as it would be right; --mend writes it into the file. --guess prints
the nearest request that can be planned, with each guess marked. A plan is checked
independently of the planner. Exit code 2 says that there are faults.`,
		Example: `  cookday check party.yaml
  cookday check party.yaml --mend
  cookday check --guess note.txt > guess.yaml
  cookday plan party.yaml --format json | cookday check -`,
		Args:              operands("FILE"),
		ValidArgsFunction: files(dayFiles),
		RunE: func(cmd *cobra.Command, args []string) error {
			in, err := readSource(args[0], cmd.InOrStdin())
			if err != nil {
				return err
			}
			if guess && !in.isPlan() {
				return writeGuess(cmd, in)
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
					offerGuess(cmd, in)
				}
				return &toldError{code}
			}
			if _, err = fmt.Fprintf(cmd.OutOrStdout(), "%s: no faults found in this %s\n", in.name, kind); err == nil && kind == "request" {
				err = sayHeard(cmd, in)
			}
			return err
		},
	}
	cmd.Flags().BoolVar(&mend, "mend", false, "write what is certainly meant into the file")
	cmd.Flags().BoolVar(&guess, "guess", false, "print the nearest request that can be planned")
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
	remarks := newRemarks(string(in.data), string(mended))
	in.data = mended
	if !in.isFile() {
		_, err := cmd.OutOrStdout().Write(mended)
		return in, err
	}
	if err := os.WriteFile(in.name, mended, 0o644); err != nil {
		return in, fileTrouble(in.name, err)
	}
	_, err := fmt.Fprintf(cmd.ErrOrStderr(), "%s: written anew, with what was certainly meant\n%s", in.name, remarks)
	return in, err
}

// newRemarks are the lines that stand behind a # in a mended request and did not before: what is
// only a remark now, and how words were read. None of it is lost without a word.
func newRemarks(was, is string) string {
	before := strings.Split(was, "\n")
	kept := map[string]bool{} // lines of before as they are behind a #
	for _, line := range before {
		kept[strings.TrimSpace(line)] = strings.TrimSpace(line) != ""
	}
	whole := !slices.ContainsFunc(before, func(line string) bool { // a note or a table: all of it is written anew
		return strings.TrimSpace(line) != "" && !strings.Contains(is, "# "+strings.TrimSpace(line))
	})
	var told strings.Builder
	for _, line := range strings.Split(is, "\n") {
		text, remark := strings.CutPrefix(line, "# ")
		text = strings.TrimSpace(text)
		switch {
		case !remark || slices.Contains(before, line) || whole && kept[text]:
		case kept[text]:
			fmt.Fprintf(&told, "  - only a remark now: %s\n", text)
		default:
			fmt.Fprintf(&told, "  - %s\n", text)
		}
	}
	return told.String()
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
	offerGuess(cmd, in)
	return r, &toldError{code}
}

// sayHeard says how a cook's own words were read, and how to have them in the form's.
func sayHeard(cmd *cobra.Command, in source) error {
	r, err := schedule.Understand(in.data, homeNow(cmd))
	if err != nil {
		return err
	}
	for _, said := range r.Heard {
		if _, err := fmt.Fprintf(cmd.OutOrStdout(), "  - %s\n", said); err != nil {
			return err
		}
	}
	if _, certain := schedule.MendOn(in.data, homeNow(cmd)); certain && in.isFile() {
		_, err = fmt.Fprintf(cmd.OutOrStdout(), "cookday check %s --mend writes it down in the words that the form has.\n", in.name)
	}
	return err
}

// sayMended shows the parts of a request that are certainly meant otherwise, set right.
// A part that would still be refused is not shown.
func sayMended(cmd *cobra.Command, in source) {
	mended, certain := schedule.MendOn(in.data, homeNow(cmd))
	if !certain {
		return
	}
	lead, text := "This would be right:", strings.TrimRight(string(mended), "\n")
	if wrong := faultyLines(cmd, mended); len(wrong) > 0 && strings.HasPrefix(text, "{") { // of JSON a part alone is nothing
		lead = "This is what is certain of it; the others above still need you:"
	} else if len(wrong) > 0 {
		lead, text = "These lines would be right; the others above still need you:", strings.Join(rightBlocks(string(in.data), string(mended), wrong), "\n")
	}
	if text == "" {
		return
	}
	fmt.Fprintf(cmd.ErrOrStderr(), "%s\n%s\n", lead, text)
	if in.isFile() {
		fmt.Fprintf(cmd.ErrOrStderr(), "cookday check %s --mend writes it into the file.\n", in.name)
	}
}

// rightBlocks are the whole fields at the left margin that were mended and have no fault.
func rightBlocks(was, is string, wrong []int) (right []string) {
	before, lines := strings.Split(was, "\n"), strings.Split(is, "\n")
	for from := 0; from < len(lines); {
		to := from + 1
		for to < len(lines) && !beginsField(lines[to]) {
			to++
		}
		block := lines[from:to]
		for len(block) > 0 && (block[len(block)-1] == "" || strings.HasPrefix(block[len(block)-1], "#")) {
			block = block[:len(block)-1]
		}
		fresh := slices.ContainsFunc(block, func(line string) bool { return !slices.Contains(before, line) })
		refused := slices.ContainsFunc(wrong, func(line int) bool { return from < line && line <= to })
		if fresh && !refused && beginsField(lines[from]) {
			right = append(right, block...)
		}
		from = to
	}
	return right
}

// beginsField says whether a line is the first of a field at the left margin.
func beginsField(line string) bool { return line != "" && !strings.ContainsAny(line[:1], " \t-#") }

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
