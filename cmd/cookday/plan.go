package main

import (
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

func planCommand() *cobra.Command {
	var s show
	cmd := &cobra.Command{
		Use:   "plan FILE",
		Short: "Plan the day of a request",
		Long: `plan reads a request (YAML or JSON; - for standard input) and prints the plan.
Exit code 1 says that the day cannot be done as asked; the plan then says why
and what would help. A day that is past is planned too, and said to be past.`,
		Example: `  cookday plan party.yaml
  cookday plan party.yaml --out party.html
  cookday plan party.yaml --format svg --picture grate --out grate.svg
  cookday plan party.yaml --brief --now 14:30`,
		Args:              operands("FILE"),
		ValidArgsFunction: files(dayFiles),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := s.check(); err != nil {
				return err
			}
			understand := schedule.Understand
			if s.format == formatICS || strings.HasSuffix(s.out, ".ics") { // a calendar lives by its zone and by its day
				understand = schedule.UnderstandOnTheDay
			}
			p, err := planFile(cmd, args[0], understand)
			if err != nil {
				return err
			}
			sayPast(cmd, args[0], p)
			return s.plan(cmd, p)
		},
	}
	s.addFlags(cmd)
	cmd.Flags().StringVar(&s.now, "now", "", "`time` to mark as now: 14:30, 2027-07-03T14:30 or RFC 3339")
	return cmd
}

// sayPast says that a meal or its fire is past: the day is planned all the same, for whoever
// looks back.
func sayPast(cmd *cobra.Command, name string, p schedule.Plan) {
	if name == "-" {
		name = "standard input"
	}
	u, now := p.Request.Units, clockNow(cmd)
	switch at := p.LightAt; {
	case now.After(p.ServeAt):
		fmt.Fprintf(cmd.ErrOrStderr(), "%s: serve: %s is past; this is how that day would have gone\n", name, u.Date(p.ServeAt)+", "+u.Clock(p.ServeAt))
	case at != nil && now.After(*at) && p.Request.Lit == nil:
		fmt.Fprintf(cmd.ErrOrStderr(), "%s: the fire of this plan is lit at %s, which is past. Move serve to a later hour, or write lit: %q if the fire burns since then; on the day, cookday now says how to go on from here\n",
			name, u.Clock(*at)+" on "+u.Date(*at), at.Format("15:04"))
	default:
		sayThawPast(cmd, name, p, now)
	}
}

// sayThawPast says that a thaw had to begin before now: whoever has begun is right, and
// whoever has not must plan from now on.
func sayThawPast(cmd *cobra.Command, name string, p schedule.Plan, now time.Time) {
	u := p.Request.Units
	for _, s := range p.Steps {
		if s.Kind != schedule.StepThaw || !s.At.Before(now) {
			continue
		}
		at := now.In(p.ServeAt.Location())
		dish, _ := p.Dish(s.Dish)
		fmt.Fprintf(cmd.ErrOrStderr(), "%s: %s had to begin to thaw by %s, which is past. If it is not thawing since then, write earliest: {date: %s, time: %q} and plan again: the plan then says what can still be done\n",
			name, dish.Name, u.Clock(s.At)+" on "+u.Date(s.At), at.Format("2006-01-02"), at.Format("15:04"))
	}
}

// planFile plans the request of a file.
func planFile(cmd *cobra.Command, name string, understand func([]byte, time.Time) (schedule.Request, error)) (schedule.Plan, error) {
	in, err := readSource(name, cmd.InOrStdin())
	if err != nil {
		return schedule.Plan{}, err
	}
	if in.isPlan() {
		return schedule.Plan{}, usage(`%s: is a plan already; plan wants a request, such as the one under "request" in it`, in.name)
	}
	r, err := readRequest(cmd, in, understand)
	if err != nil {
		return schedule.Plan{}, err
	}
	p, err := planner.Make(cmd.Context(), r, planner.Judged())
	return p, inFile(in.name, err)
}
