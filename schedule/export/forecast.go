package export

import (
	"encoding/csv"
	"io"
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule"
)

// outlookMilestones get three columns each, in this order.
var outlookMilestones = []schedule.MilestoneKind{schedule.MilestoneStallBegins, schedule.MilestoneWrap, schedule.MilestoneStallEnds,
	schedule.MilestoneTakeOff, schedule.MilestoneRested}

// ForecastCSV writes a forecast as a header and one line (RFC 4180), minutes from
// the put-on. Columns keep their names and order; the quantiles that were asked
// for come last. The error is that of the writer.
func ForecastCSV(w io.Writer, o schedule.Outlook) error {
	header := []string{"cut", "mass_kg", "grate_c", "target_c", "way", "reaches", "reason"}
	line := []string{cell(o.Cut), number(o.MassKg, 3), number(o.GrateC, 1), number(o.TargetC, 1), cell(o.Way), strconv.FormatBool(o.Reaches), cell(o.Reason)}
	var quantiles []schedule.Quantile
	for _, kind := range outlookMilestones {
		name := strings.ReplaceAll(string(kind), "-", "_")
		header = append(header, name+"_early_minutes", name+"_expected_minutes", name+"_late_minutes")
		i := slices.IndexFunc(o.Milestones, func(m schedule.OutlookMilestone) bool { return m.Kind == kind })
		if i < 0 {
			line = append(line, "", "", "")
			continue
		}
		m := o.Milestones[i]
		line = append(line, number(m.EarlyMinutes, 1), number(m.ExpectedMinutes, 1), number(m.LateMinutes, 1))
		if kind == schedule.MilestoneTakeOff {
			quantiles = m.Quantiles
		}
	}
	header, line = append(header, "findings", "cautions"), append(line, cell(findingTexts(o.Findings)), cell(strings.Join(cautionTexts(o.Cautions), " ")))
	for _, q := range quantiles {
		header = append(header, "take_off_"+strconv.FormatFloat(q.Probability, 'g', -1, 64)+"_minutes")
		line = append(line, number(q.Minutes, 1))
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
