package main

import (
	"io"
	"strings"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/export"
	"example.com/cookday/schedule/planner"
)

func nowCommand() *cobra.Command {
	var typed string
	cmd := &cobra.Command{
		Use:   "now DAY [LOG]",
		Short: "What to do now, what comes next, what to worry about",
		Long: `now reads the request or plan of a day and its log, and says in a few lines how
the day stands. Without LOG it is the CSV file of the same name beside DAY, if there
is one: cookday note writes it.`,
		Example: `  cookday now saturday.yaml
  cookday now party.json log.csv --now 05:12`,
		Args: func(cmd *cobra.Command, args []string) error {
			switch {
			case len(args) == 0:
				return usage("%s: DAY is missing; see %s --help", cmd.CommandPath(), cmd.CommandPath())
			case len(args) > 2:
				return usage("%s: %q is one argument too many; see %s --help", cmd.CommandPath(), args[2], cmd.CommandPath())
			}
			return nil
		},
		ValidArgsFunction: files(dayFiles, logFiles),
		RunE:              func(cmd *cobra.Command, args []string) error { return now(cmd, args, typed) },
	}
	cmd.Flags().StringVar(&typed, "now", "", "`time` of now: 14:30, 2027-07-03T14:30 or RFC 3339 (if not given: this machine's clock)")
	return cmd
}

// now says how a day stands.
func now(cmd *cobra.Command, args []string, typed string) error {
	name := strings.Join(args[1:], "")
	if name == "" {
		name, _ = besides(args[0], ".csv")
	}
	p, err := readDay(cmd, args[0], name)
	if err != nil {
		return err
	}
	var log []schedule.Entry
	var aside []schedule.LeftAside
	if name != "" {
		if log, aside, name, err = followFile(cmd, name, p); err != nil {
			return err
		}
	}
	at, err := nowOf(cmd, typed, p, schedule.JoinLogs(p.Log, log))
	if err != nil {
		return err
	}
	if err := notAhead(name, log, typed, at, p.Request.Units); err != nil {
		return err
	}
	revised, err := planner.Revise(cmd.Context(), p, log, at, planner.Judged())
	if err != nil {
		return inFile(args[0], err)
	}
	o := export.Options{Now: at}
	o.Width, o.Colour = terminal(cmd.OutOrStdout())
	return emit(cmd.OutOrStdout(), "", func(w io.Writer) error { return export.Now(w, revised.WithLeftAside(aside), o) })
}
