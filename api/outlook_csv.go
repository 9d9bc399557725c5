package api

import (
	"encoding/csv"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule"
)

// outlookMilestones get three columns each, in this order.
var outlookMilestones = []string{schedule.MilestoneStallBegins, schedule.MilestoneWrap, schedule.MilestoneStallEnds,
	schedule.MilestoneTakeOff, schedule.MilestoneRested}

// outlookCSV writes a forecast as a header and one line (RFC 4180), minutes from
// the put-on. Columns keep their names and order; the quantiles that were asked
// for come last.
func outlookCSV(w io.Writer, o schedule.Outlook) error {
	header := []string{"cut", "mass_kg", "grate_c", "target_c", "way", "reaches", "reason"}
	line := []string{cell(o.Cut), decimal(o.MassKg, 3), decimal(o.GrateC, 1), decimal(o.TargetC, 1), cell(o.Way), strconv.FormatBool(o.Reaches), cell(o.Reason)}
	var quantiles []schedule.Quantile
	for _, kind := range outlookMilestones {
		name := strings.ReplaceAll(kind, "-", "_")
		header = append(header, name+"_early_minutes", name+"_expected_minutes", name+"_late_minutes")
		i := slices.IndexFunc(o.Milestones, func(m schedule.OutlookMilestone) bool { return m.Kind == kind })
		if i < 0 {
			line = append(line, "", "", "")
			continue
		}
		m := o.Milestones[i]
		line = append(line, decimal(m.EarlyMinutes, 1), decimal(m.ExpectedMinutes, 1), decimal(m.LateMinutes, 1))
		if kind == schedule.MilestoneTakeOff {
			quantiles = m.Quantiles
		}
	}
	header, line = append(header, "findings", "cautions"), append(line, cell(findingTexts(o.Findings)), cell(cautionTexts(o.Cautions)))
	for _, q := range quantiles {
		header = append(header, "take_off_"+strconv.FormatFloat(q.Probability, 'g', -1, 64)+"_minutes")
		line = append(line, decimal(q.Minutes, 1))
	}
	out := csv.NewWriter(w)
	out.UseCRLF = true
	return out.WriteAll([][]string{header, line})
}

func findingTexts(findings []schedule.Finding) string {
	texts := make([]string, len(findings))
	for i, f := range findings {
		texts[i] = f.Text
	}
	return strings.Join(texts, " ")
}

func cautionTexts(cautions []schedule.Caution) string {
	texts := make([]string, len(cautions))
	for i, c := range cautions {
		texts[i] = c.Text
	}
	return strings.Join(texts, " ")
}

// cell keeps a spreadsheet from taking a text for a formula.
func cell(text string) string {
	text = strings.Map(func(r rune) rune {
		if r < ' ' {
			return ' '
		}
		return r
	}, text)
	if strings.IndexAny(text, "=+-@") == 0 {
		return "'" + text
	}
	return text
}

func decimal(x float64, places int) string {
	scale := math.Pow10(places)
	return strconv.FormatFloat(math.Round(x*scale)/scale+0, 'f', places, 64) // + 0 turns -0 into 0
}
