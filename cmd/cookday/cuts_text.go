package main

import (
	"fmt"
	"io"
	"math"
	"strings"
	"text/tabwriter"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

// estimateMark stands before the name of a cut whose figures are an estimate.
const estimateMark = "~"

// listCuts prints a row a cut.
func listCuts(w io.Writer, cuts []schedule.Cut, columns int) error {
	table := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(table, "  name\twhat it is\tusual\ttaken off at")
	for _, c := range cuts {
		mark := " "
		if c.Estimate {
			mark = estimateMark
		}
		done := "by the clock"
		for _, d := range c.Doneness {
			if d.Default {
				done = unit.US.Core(unit.Temperature(d.CoreC))
			}
		}
		fmt.Fprintf(table, "%s %s\t%s\t%s\t%s\n", mark, c.Name, c.Title, unit.US.Mass(unit.Mass(c.TypicalKg)), done)
	}
	if err := table.Flush(); err != nil {
		return err
	}
	p := page{columns: columns}
	p.line("")
	p.item(estimateMark+" ", "size and make-up are an estimate that was never compared with a cook.")
	p.item("", "Taken off at: what cooks usually do, for some cuts below the USDA minimum. cookday cuts NAME says more about one.")
	_, err := io.WriteString(w, p.String())
	return err
}

// writeCut prints what a cook wants to know of a cut.
func writeCut(w io.Writer, c schedule.Cut, columns int) error {
	p := page{columns: columns}
	p.line(c.Title + " (" + c.Name + ")")
	p.line("")
	if len(c.Also) > 0 {
		p.row("Also called", strings.Join(c.Also, ", "))
	}
	p.row("One piece", fmt.Sprintf("%s to %s, usually %s", mass(c.MinPieceKg), mass(c.MaxPieceKg), mass(c.TypicalKg)))
	p.row("Shape", shapeText(c))
	p.row("A serving", mass(c.ServingKg)+" raw")
	p.row("Where", placesText(c))
	p.row("Wrap", wrapText(c))
	p.row("Rest", restText(c.RestMinutes))
	p.row("How to tell", c.Look)
	if c.MinimumC > 0 {
		p.row("Minimum", minimumText(c))
	}
	doneness(&p, c)
	if c.Note != "" {
		p.row("Note", c.Note)
	}
	p.row("Figures", sourcesText(c))
	_, err := io.WriteString(w, p.String())
	return err
}

func doneness(p *page, c schedule.Cut) {
	if len(c.Minutes) > 0 {
		p.row("Done", fmt.Sprintf("by the clock: %.0f min, between %.0f and %.0f", c.Minutes[1], c.Minutes[0], c.Minutes[2]))
	}
	for i, d := range c.Doneness {
		label, usual := "", ""
		if i == 0 {
			label = "Done"
		}
		if d.Default {
			usual = " (used when a request has no target)"
		}
		p.row(label, fmt.Sprintf("%s: %s; %s%s", core(d.CoreC), d.Name, d.Text, usual))
	}
	if len(c.TenderMinutes) > 0 {
		p.row("", fmt.Sprintf("By the bend, usually at %s inside, after %s to %s in all at 225-250 °F.", schedule.BendText(unit.US), about(unit.US, c.TenderMinutes[0]), about(unit.US, c.TenderMinutes[1])))
	}
}

// minimumText is the published minimum with the rest that belongs to it.
func minimumText(c schedule.Cut) string {
	text := core(c.MinimumC) + " inside (USDA)"
	if c.MinimumRestMinutes > 0 {
		text += fmt.Sprintf(", with %s of rest", about(unit.US, c.MinimumRestMinutes))
	}
	return text
}

func shapeText(c schedule.Cut) string {
	// A quarter of an inch is about 5 mm: none is told finer than the other.
	dimensions := func(s unit.System, stepM float64) string {
		length := func(m float64) string {
			if stepM > 0 {
				m = math.Round(m/stepM) * stepM
			}
			return s.Length(unit.Length(m))
		}
		return fmt.Sprintf("%s x %s x %s", length(c.ThicknessM), length(c.WidthM), length(c.LengthM))
	}
	return fmt.Sprintf("about %s (%s) at that weight", dimensions(unit.US, 0), dimensions(unit.Metric, 0.005))
}

func placesText(c schedule.Cut) string {
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

func restText(r schedule.CutRest) string {
	text := fmt.Sprintf("best %s, good for %s", about(unit.US, r.Ideal), about(unit.US, r.Longest))
	if r.Least > 0 {
		text = fmt.Sprintf("at least %s, %s", about(unit.US, r.Least), text)
	}
	return text
}

func wrapText(c schedule.Cut) string {
	switch {
	case !c.WrapAllowed:
		return "never"
	case c.Wrap == schedule.WrapNone:
		return "not usually; may be wrapped"
	}
	return fmt.Sprintf("in %s, once it is %s inside", c.Wrap, core(c.WrapFromC))
}

func sourcesText(c schedule.Cut) string {
	text := "Doneness, rest and wrap are common practice, no source."
	if c.Estimate {
		text = "Size and make-up are an estimate that was never compared with a cook. " + text
	}
	return text
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
