package main

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// estimateMark stands before the name of a cut whose figures are an estimate.
const estimateMark = "~"

// listCuts prints a row a cut.
func listCuts(w io.Writer, cuts []cut.Cut, columns int) error {
	table := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(table, "  name\twhat it is\ta piece\ttaken off at")
	for _, c := range cuts {
		mark := " "
		if c.Estimate {
			mark = estimateMark
		}
		done := "by the clock"
		if d, ok := c.DefaultDoneness(); ok {
			done = unit.US.Core(unit.Temperature(d.CoreC))
		}
		fmt.Fprintf(table, "%s %s\t%s\t%s\t%s\n", mark, c.Name, c.Title, unit.US.Mass(unit.Mass(c.Typical)), done)
	}
	if err := table.Flush(); err != nil {
		return err
	}
	p := page{columns: columns}
	p.line("")
	p.item(estimateMark+" ", "size and make-up are an estimate that was never compared with a cook.")
	p.item("", "Taken off at: the habit of cooks, for some cuts below the published minimum. cookday cuts NAME says more of one.")
	_, err := io.WriteString(w, p.String())
	return err
}

// writeCut prints what a cook wants to know of a cut.
func writeCut(w io.Writer, c cut.Cut, columns int) error {
	p := page{columns: columns}
	p.line(c.Title + " (" + c.Name + ")")
	p.line("")
	if len(c.Also) > 0 {
		p.row("Also called", strings.Join(c.Also, ", "))
	}
	p.row("One piece", fmt.Sprintf("%s to %s, usually %s", mass(c.MinPieceKg), mass(c.MaxPieceKg), mass(c.Typical)))
	p.row("Shape", shapeText(c))
	p.row("A serving", mass(c.ServingKg)+" raw")
	p.row("Where", placesText(c))
	p.row("Wrap", wrapText(c))
	p.row("Rest", restText(c.Rest))
	p.row("How to tell", c.Look)
	doneness(&p, c)
	if c.Note != "" {
		p.row("Note", c.Note)
	}
	p.row("Figures from", sourcesText(c))
	_, err := io.WriteString(w, p.String())
	return err
}

func doneness(p *page, c cut.Cut) {
	if c.Style == cut.Timed {
		p.row("Done", fmt.Sprintf("by the clock: %.0f min, between %.0f and %.0f", c.Timed[1], c.Timed[0], c.Timed[2]))
	}
	for i, d := range c.Doneness {
		label, usual := "", ""
		if i == 0 {
			label = "Done"
		}
		if d.Default {
			usual = " (what a request without a target gets)"
		}
		p.row(label, fmt.Sprintf("%s: %s; %s%s", core(d.CoreC), d.Name, d.Text, usual))
	}
	if c.TenderMinutes[1] > 0 {
		p.row("", fmt.Sprintf("Tender after %s to %s in all at 225-250 F.", about(unit.US, c.TenderMinutes[0]), about(unit.US, c.TenderMinutes[1])))
	}
}

func shapeText(c cut.Cut) string {
	t, w, l := c.Dimensions(c.Typical, 0)
	dimensions := func(s unit.System) string {
		return fmt.Sprintf("%s x %s x %s", s.Length(unit.Length(t)), s.Length(unit.Length(w)), s.Length(unit.Length(l)))
	}
	return fmt.Sprintf("about %s (%s) at that weight", dimensions(unit.US), dimensions(unit.Metric))
}

func placesText(c cut.Cut) string {
	var places []string
	for _, p := range c.Places {
		where := "away from the coals"
		if p.Direct {
			where = "over the coals"
		}
		var levels []string
		for _, level := range p.LevelsC {
			levels = append(levels, grate(level))
		}
		places = append(places, fmt.Sprintf("%s, %s band: %s", where, p.Band, strings.Join(levels, ", ")))
	}
	if len(places) == 0 {
		return "anywhere on the grate"
	}
	return strings.Join(places, "; ")
}

func restText(r cut.Rest) string {
	text := fmt.Sprintf("best %s, good for %s", about(unit.US, r.IdealMinutes), about(unit.US, r.LongestMinutes))
	if r.MinMinutes > 0 {
		text = fmt.Sprintf("at least %s, %s", about(unit.US, r.MinMinutes), text)
	}
	return text
}

func wrapText(c cut.Cut) string {
	switch {
	case !c.WrapAllowed:
		return "never"
	case c.Wrap.With == "none":
		return "not as a habit; may be wrapped"
	}
	return fmt.Sprintf("in %s, once the core is at %s", c.Wrap.With, core(c.Wrap.FromC))
}

func sourcesText(c cut.Cut) string {
	text := strings.Join(c.Sources, ", ")
	if c.Estimate {
		text += "; size and make-up are an estimate that was never compared with a cook"
	}
	return text + "; doneness, rest and wrap are common practice, no source"
}

func core(c float64) string {
	return unit.US.Core(unit.Temperature(c)) + " (" + unit.Metric.Core(unit.Temperature(c)) + ")"
}

func grate(c float64) string {
	return unit.US.Grate(unit.Temperature(c)) + " (" + unit.Metric.Grate(unit.Temperature(c)) + ")"
}

func mass(kg float64) string {
	return unit.US.Mass(unit.Mass(kg)) + " (" + unit.Metric.Mass(unit.Mass(kg)) + ")"
}
