package main

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

// writeOutlook prints a forecast for a cook: the answer, the table, what to mind.
func writeOutlook(w io.Writer, q schedule.Inquiry, o schedule.Outlook, columns int) error {
	t := page{columns: columns}
	units := q.Units
	if units == "" {
		units = unit.US
	}
	t.item("", outlookTitle(units, o, q.Dish.Target != nil))
	if o.Reaches {
		t.line("")
		t.WriteString(outlookTable(units, o, q.Dish.Target != nil))
		t.line("")
		t.item("", "From putting it on. One cook in ten is faster than early, one in ten slower than late.")
	} else {
		t.item("", "It does not get there. "+o.Reason)
	}
	for _, f := range o.Findings {
		t.item(mark(f.Severity), f.Text)
	}
	t.line("")
	for _, severity := range []schedule.Severity{schedule.Danger, schedule.Warning, schedule.Info} {
		for _, c := range o.Cautions {
			if c.Severity == severity {
				t.item(mark(severity), c.Text)
			}
		}
	}
	_, err := io.WriteString(w, t.String())
	return err
}

// outlookTitle says what was asked: "Brisket, 12 lb: beside the coals ..., taken
// off at 203 F." What cannot be done has no way of cooking, only its grate.
func outlookTitle(units unit.System, o schedule.Outlook, asked bool) string {
	text := o.Cut
	if c, err := schedule.FindCut(o.Cut); err == nil {
		text = c.Title
	}
	if o.MassKg > 0 {
		text += ", " + units.Mass(unit.Mass(o.MassKg))
	}
	way := o.Way
	if way == "" {
		way = "with the grate at " + units.Grate(unit.Temperature(o.GrateC))
	}
	text += ": " + way
	switch {
	case byTheBend(o, asked):
		text += ", taken off by the bend, usually at " + schedule.BendText(units)
	case o.TargetC > 0:
		text += ", taken off at " + units.Core(unit.Temperature(o.TargetC))
	}
	return text + "."
}

// byTheBend says whether a cut is taken off by how it bends, where no target was asked for.
func byTheBend(o schedule.Outlook, asked bool) bool {
	c, err := schedule.FindCut(o.Cut)
	return err == nil && len(c.TenderMinutes) > 0 && !asked
}

func mark(severity schedule.Severity) string {
	if severity == schedule.Info {
		return "- "
	}
	return "! "
}

// outlookTable has a row a milestone and a column for each probability asked for.
func outlookTable(units unit.System, o schedule.Outlook, asked bool) string {
	var b strings.Builder
	table := tabwriter.NewWriter(&b, 0, 0, 3, ' ', 0)
	fmt.Fprint(table, "\tinside\tearly\texpected\tlate")
	if len(o.Milestones) > 0 {
		for _, q := range o.Milestones[0].Quantiles {
			fmt.Fprintf(table, "\t%g%%", 100*q.Probability)
		}
	}
	fmt.Fprintln(table)
	for _, m := range o.Milestones {
		core := ""
		switch {
		case m.Kind == schedule.MilestoneOn || m.Kind == schedule.MilestoneRested: // what it is then decides nothing
		case m.Kind == schedule.MilestoneTakeOff && byTheBend(o, asked):
			core = "by the bend"
		case m.CoreC > 0:
			core = units.Core(unit.Temperature(m.CoreC))
		}
		fmt.Fprintf(table, "%s\t%s\t%s\t%s\t%s", strings.ReplaceAll(string(m.Kind), "-", " "), core,
			about(units, m.EarlyMinutes), about(units, m.ExpectedMinutes), about(units, m.LateMinutes))
		for _, q := range m.Quantiles {
			fmt.Fprintf(table, "\t%s", about(units, q.Minutes))
		}
		fmt.Fprintln(table)
	}
	table.Flush()
	return b.String()
}

func about(units unit.System, minutes float64) string {
	return units.About(time.Duration(minutes * float64(time.Minute)))
}
