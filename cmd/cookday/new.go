package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/draft"
	"example.com/cookday/schedule/export"
	"example.com/cookday/schedule/planner"
	"example.com/cookday/schedule/unit"
)

// newDay is what the command new was told by its flags.
type newDay struct {
	like, units string
	given       map[string]*string // by the key of a question
	dishes      []string
	yes, force  bool
}

// newFlags are the questions of the day that a flag answers.
var newFlags = []struct{ key, help string }{
	{draft.KeyWhen, "`time` people eat: \"Saturday 6pm\", \"2027-07-03 18:00\""},
	{draft.KeyZone, "time `zone`, such as America/Chicago (if not given: this machine's)"},
	{draft.KeyGrill, "`grill` and its size: \"kettle 22 in\", \"box 36 x 18 in\""},
	{draft.KeyOven, "is there a kitchen oven: `yes or no`"},
	{draft.KeyQuiet, "`hours` when everybody sleeps: \"11pm to 5am\", never"},
	{draft.KeyGuests, "`people`: 8, \"6 adults and 2 children\""},
	{draft.KeyNight, "may the fire burn through the night unwatched: `yes or no`"},
	{draft.KeyFrail, "is anyone very young, old, pregnant or ill: `yes, no` or \"not known\""},
}

func newCommand() *cobra.Command {
	n := newDay{given: map[string]*string{}}
	cmd := &cobra.Command{
		Use:   "new [FILE]",
		Short: "Write the request of a first day, question by question",
		Long: `new asks for a day line by line, writes its request into FILE, and says in a few
lines what its plan is. Enter takes the answer in brackets. What a flag has said is
not asked, and with --yes nothing is. Without FILE the day of the week is its name;
with - the request goes to standard output. A file that is there is never written
over without asking. Where the answers end before the day is whole (Ctrl-D), none is
written: a command is printed that goes on from there.`,
		Example: `  cookday new
  cookday new --like ribs
  cookday new sunday.yaml --yes --when "Sunday 1pm" --zone America/Denver \
    --grill "kettle 22 in" --guests 12 --dish "pork butt, 8 lb, label none"`,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) > 1 {
				return usage("%s: %q is one argument too many; see %s --help", cmd.CommandPath(), args[1], cmd.CommandPath())
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error { return n.run(cmd, strings.Join(args, "")) },
	}
	f := cmd.Flags()
	f.StringVar(&n.like, "like", "", "`day` to begin with: "+strings.Join(draft.Likes(), ", "))
	complete(cmd, "like", draft.Likes()...)
	for _, q := range newFlags {
		n.given[q.key] = f.String(q.key, "", q.help)
	}
	f.StringArrayVar(&n.dishes, "dish", nil, "`dish`, once for each: \"brisket, 10 lb, label none\", \"2 ribeyes, medium\"")
	f.StringVar(&n.units, "units", "", "`system`: us or metric (if not given: by the time zone)")
	complete(cmd, "units", string(unit.US), string(unit.Metric))
	f.BoolVarP(&n.yes, "yes", "y", false, "ask nothing: take the answers in brackets")
	f.BoolVar(&n.force, "force", false, "write over a file that is there")
	return cmd
}

// run asks, writes, and says what the plan is.
func (n *newDay) run(cmd *cobra.Command, name string) error {
	zone := machineZone()
	if loc, err := time.LoadLocation(*n.given[draft.KeyZone]); err == nil && *n.given[draft.KeyZone] != "" {
		zone = loc.String()
	}
	now := clockNow(cmd)
	if loc, err := time.LoadLocation(zone); err == nil && zone != "" {
		now = now.In(loc)
	}
	i, err := draft.New(now, zone, n.like)
	if err != nil {
		return usage("--like: %s", err)
	}
	if n.units != "" {
		u, err := unit.ParseSystem(n.units)
		if err != nil {
			return usage("--units: %s", err)
		}
		i.UseUnits(u)
	}
	p := newPrompt(cmd, name == "-")
	if name != "-" && name != "" {
		if err := n.mayWrite(p, name); err != nil {
			return err
		}
	}
	kept, missing, err := n.ask(p, i)
	if err != nil {
		return err
	}
	if len(missing) > 0 {
		return usage("nothing is written: the answers ended before the day was whole. This goes on from there:\n%s\nStill missing:\n%s", goOn(name, kept), strings.Join(missing, "\n"))
	}
	if name == "" {
		name = freeName(i.Weekday())
	}
	if err := emit(cmd.OutOrStdout(), strings.TrimPrefix(name, "-"), func(w io.Writer) error { _, err := io.WriteString(w, i.Text()); return err }); err != nil {
		return err
	}
	if name == "-" {
		return nil
	}
	fmt.Fprintf(cmd.OutOrStdout(), "\nWritten: %s\n", name)
	return n.show(cmd, name, []byte(i.Text()))
}

// mayWrite asks before a file is written over.
func (n *newDay) mayWrite(p *prompt, name string) error {
	info, err := os.Stat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist) || n.force && err == nil && !info.IsDir():
		return nil
	case err == nil && info.IsDir():
		return usage("%s: is a folder, not a file", name)
	case n.yes:
		return usage("%s: is there already; give another name, or --force", name)
	}
	text, err := p.ask(name+" is there already. Write over it?", "no")
	if err != nil && !errors.Is(err, io.EOF) {
		return err
	}
	if !strings.HasPrefix(strings.ToLower(text), "y") {
		return usage("%s: is there already and stays as it is; give another name, or --force", name)
	}
	return nil
}

// show says what the plan of the request is.
func (n *newDay) show(cmd *cobra.Command, name string, text []byte) error {
	r, err := schedule.Read(text)
	if err != nil {
		return inFile(name, err)
	}
	p, err := planner.Make(cmd.Context(), r, planner.Judged())
	if errors.Is(err, context.Canceled) {
		return usage("%s: written, and stopped before it was planned", name)
	}
	if err != nil {
		return inFile(name, err)
	}
	sayPast(cmd, name, p)
	out := cmd.OutOrStdout()
	var o export.Options
	o.Width, o.Colour = terminal(out)
	fmt.Fprintln(out)
	if err := export.Headline(out, p, o); err != nil {
		return err
	}
	if !p.Feasible {
		return errInfeasible
	}
	fmt.Fprintf(out, "\ncookday plan %s    the whole sheet; --out sheet.html for a phone\ncookday now %s     on the day: what to do now\n", name, name)
	return nil
}

// freeName is a name for the file that no file has.
func freeName(stem string) string {
	stem = strings.ToLower(stem)
	name := stem + ".yaml"
	for k := 2; ; k++ {
		if _, err := os.Lstat(name); errors.Is(err, fs.ErrNotExist) {
			return name
		}
		name = fmt.Sprintf("%s-%d.yaml", stem, k)
	}
}
