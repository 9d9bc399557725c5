package main

import (
	"io"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// fireHelp explains the fields of an inquiry about a fire, which are the flags of fire.
var fireHelp = map[string]string{
	"air":       "`temperature` outside (70 F, if not given)",
	"at":        "`place` of the thermometer: grate or lid (grate, if not given)",
	"bottom":    "`opening` of the bottom vent: 1/4, 25%, a quarter, open or shut",
	"diameter":  "`width` of the grill (22 in, if not given)",
	"fuel":      "`fuel`: briquettes or lump (briquettes, if not given)",
	"grill":     "`grill`: kettle, smoker, drum or ceramic, with its size if you like: \"kettle 18 in\" (a kettle, if not given)",
	"layout":    "`layout` of the coals: banked, ring, two-zone or spread (banked, if not given)",
	"lit":       "`coals` that were poured lit",
	"no-food":   "nothing lies on the grate",
	"shows":     "`temperature` that the thermometer shows now",
	"since-lit": "`time` since the fire was lit: 90m or 2h30m",
	"steer":     "`vent` that you steer by: top or bottom (top, if not given)",
	"top":       "`opening` of the top vent: 1/4, 25%, a quarter, open or shut",
	"units":     "`system` of the text: us or metric",
	"unlit":     "`coals` that were laid unlit",
	"want":      "`temperature` that the grate should have: \"250 F\"",
	"water-pan": "a pan of water stands in the grill",
	"wind":      "`speed` of the wind: \"12 mph\" (none, if not given)",
}

// boolField says which fields of the inquiry are said by being there.
func boolField(name string) bool { return name == "no-food" || name == "water-pan" }

func fireCommand() *cobra.Command {
	var format, out, log, own string
	cmd := &cobra.Command{
		Use:   "fire --want TEMPERATURE",
		Short: "Say what to do about the fire now, without a plan",
		Long: `fire says which vent to move how far, or to leave it alone, what to expect in 15
and 30 minutes, when to look again, and why. One reading and the vents are enough;
a log of the fire (--log) makes it surer: readings at the grate teach it your grill.

The log is CSV with the columns time, kind and value, or JSON, as for revise, with the
entries of the fire alone:

  time,kind,value
  09:00,lit,
  09:15,lit-coals,12
  09:15,vents,"top 1/2, bottom 1/2"
  10:30,grate,315 F

A thermometer in the lid is not the grate: of it alone you get a direction only.`,
		Example: `  cookday fire --want 250F --shows 315F --top 1/2 --bottom 1/4 --since-lit 90m
  cookday fire --want 250F --shows 315F --at lid --top 1/2 --bottom 1/4
  cookday fire --want 250F --log fire.csv`,
		Args: operands(),
		RunE: func(cmd *cobra.Command, _ []string) error { return steerFire(cmd, log, own, format, out) },
	}
	f := cmd.Flags()
	for _, name := range schedule.FireFields() {
		if boolField(name) {
			f.Bool(name, false, fireHelp[name])
			continue
		}
		f.String(name, "", fireHelp[name])
	}
	f.StringVar(&log, "log", "", "`file` with the fire's log; - for standard input")
	f.StringVar(&own, "own", "", "`file` with the record of this grill, from cookday learn, or a request with own in its grill")
	f.StringVarP(&format, "format", "f", formatText, "`format`: text or json")
	f.StringVarP(&out, "out", "o", "", "`file` to write, instead of standard output")
	complete(cmd, "format", formatText, formatJSON)
	complete(cmd, "at", "grate", "lid")
	complete(cmd, "grill", schedule.FireGrills()...)
	complete(cmd, "layout", "banked", "ring", "two-zone", "spread")
	complete(cmd, "steer", "top", "bottom")
	complete(cmd, "units", "us", "metric")
	return cmd
}

// steerFire prints the advice to what the flags of a command ask.
func steerFire(cmd *cobra.Command, log, own, format, out string) error {
	if err := oneOf("--format", format, formatText, formatJSON); err != nil {
		return err
	}
	var entries []schedule.Entry
	if log != "" {
		in, err := readSource(log, cmd.InOrStdin())
		if err != nil {
			return err
		}
		if entries, err = schedule.ReadFireLog(in.data); err != nil {
			return inFile(in.name, err)
		}
	}
	q, err := schedule.ReadFireInquiry(changedFlags(cmd.Flags(), schedule.FireFields()), entries)
	if err != nil {
		return err
	}
	if own != "" {
		if q.Own, err = readOwn(cmd, own); err != nil {
			return err
		}
	}
	s, err := planner.Fire(cmd.Context(), q)
	if err != nil {
		return err
	}
	return emit(cmd.OutOrStdout(), out, func(w io.Writer) error {
		if format == formatJSON {
			return writeJSON(w, s)
		}
		columns, _ := terminal(cmd.OutOrStdout())
		return writeSteer(w, s, columns)
	})
}

// cooksText counts cooks.
func cooksText(cooks int) string {
	if cooks == 1 {
		return "1 cook"
	}
	return strconv.Itoa(cooks) + " cooks"
}

// writeSteer prints an advice for a cook: what to do first.
func writeSteer(w io.Writer, s schedule.Steer, columns int) error {
	t := page{columns: columns}
	for _, text := range []string{s.Text, s.Expect, s.Look, s.Why} {
		if text != "" {
			t.item("", text)
		}
	}
	if len(s.Also) > 0 {
		t.line("")
		for _, text := range s.Also {
			t.item("- ", text)
		}
	}
	if s.GrillCooks > 0 {
		t.line("")
		t.item("", "By what "+cooksText(s.GrillCooks)+" on this grill taught.")
	}
	if len(s.Taken) > 0 {
		t.line("")
		t.item("", "Assumed: "+strings.Join(s.Taken, ", ")+".")
	}
	_, err := io.WriteString(w, t.String())
	return err
}
