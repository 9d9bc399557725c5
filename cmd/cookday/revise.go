package main

import (
	"time"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

func reviseCommand() *cobra.Command {
	var s show
	cmd := &cobra.Command{
		Use:   "revise DAY READINGS",
		Short: "Update a plan with what was read and done since",
		Long: `revise reads a request, or a plan (as plan --format json prints it), and a log of
readings and events, and prints the plan as it stands now: what is past stays, the
rest is arranged again, and it says what changed and why. One of the two may be -
for standard input.

The log is CSV, or JSON; cookday note adds to it, and cookday help log lists every
kind of line:

  time,dish,kind,value
  07:54,brisket,on,
  11:30,brisket,core,152 F
  11:35,brisket,wrapped,foil
  11:35,,grate,260 F`,
		Example: `  cookday plan party.yaml --out party.json
  cookday revise party.json log.csv
  cookday revise party.json log.csv --now 11:40 --brief`,
		Args:              operands("DAY", "READINGS"),
		ValidArgsFunction: files(dayFiles, logFiles),
		RunE:              func(cmd *cobra.Command, args []string) error { return revise(cmd, s, args[0], args[1]) },
	}
	s.addFlags(cmd)
	cmd.Flags().StringVar(&s.now, "now", "", "`time` of the revision: 14:30, 2027-07-03T14:30 or RFC 3339 (if not given: this machine's clock)")
	return cmd
}

// revise prints the plan of one file as it stands with the log of another.
func revise(cmd *cobra.Command, s show, plan, log string) error {
	if err := s.check(); err != nil {
		return err
	}
	if plan == "-" && log == "-" {
		return usage("%s: DAY and READINGS cannot both come from standard input", cmd.CommandPath())
	}
	p, err := readDay(cmd, plan, log)
	if err != nil {
		return err
	}
	revised, now, err := revisePlan(cmd, p, log, s.now)
	if err != nil {
		return err
	}
	s.now = now.Format(time.RFC3339)
	return s.plan(cmd, revised)
}

// revisePlan brings a plan up to now with the log of a file.
func revisePlan(cmd *cobra.Command, p schedule.Plan, name, typed string) (schedule.Plan, time.Time, error) {
	log, aside, name, err := followFile(cmd, name, p)
	if err != nil {
		return schedule.Plan{}, time.Time{}, err
	}
	now, err := nowOf(cmd, typed, p, log)
	if err != nil {
		return schedule.Plan{}, time.Time{}, err
	}
	if err := notAhead(name, log, typed, now, p.Request.Units); err != nil {
		return schedule.Plan{}, time.Time{}, err
	}
	revised, err := planner.Revise(cmd.Context(), p, log, now, planner.Judged())
	return revised.WithLeftAside(aside), now, inFile(name, err)
}
