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
		Short: "Follow the day: a plan, what was read and done since, and now",
		Long: `revise reads a request, or a plan (as plan --format json prints it), and a log of
readings and events, and prints the plan as it stands now: what is past stays, the
rest is arranged again, and it says what changed and why. One of the two may be -
for standard input.

The log is CSV with the columns time, dish, kind and value, or a JSON list of
such objects (one alone will do). A time is RFC 3339, or a clock such as 04:15,
which is the nearest one to the line before. A dish goes by its id, its name, its
cut, or any beginning that no other has. cookday note adds such lines:

  time,dish,kind,value
  07:54,Brisket,on,
  11:30,Brisket,core,152 F
  11:35,Brisket,wrapped,foil
  11:35,,grate,260 F

Kinds of reading: core, coldest (of a probe pushed through all of it), outer,
grate, gauge, oven (by a thermometer in it). Kinds of event: lit, level,
fire-out, refuelled, lid-opened, lid-closed, on, wrapped, to-oven, pulled, boxed,
counter, stopped, chilled, restarted, serving-moved, dish-added, dish-cancelled.
Of the fire also vents ("top 1/4, bottom 1/2"), lit-coals and unlit-coals (how
many), ash-cleared and wind ("12 mph" or calm).`,
		Example: `  cookday plan party.yaml --out party.json
  cookday revise party.json log.csv
  cookday revise party.json log.csv --now 11:40 --brief`,
		Args: operands("DAY", "READINGS"),
		RunE: func(cmd *cobra.Command, args []string) error { return revise(cmd, s, args[0], args[1]) },
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
	p, err := readDay(cmd, plan)
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
	in, err := readSource(name, cmd.InOrStdin())
	if err != nil {
		return schedule.Plan{}, time.Time{}, err
	}
	log, err := schedule.ReadLog(in.data, p)
	if err != nil {
		return schedule.Plan{}, time.Time{}, inFile(in.name, err)
	}
	now, err := nowOf(cmd, typed, p, log)
	if err != nil {
		return schedule.Plan{}, time.Time{}, err
	}
	revised, err := planner.Revise(cmd.Context(), p, log, now, planner.Judged())
	return revised, now, inFile(in.name, err)
}
