package main

import (
	"fmt"
	"io"
	"math"
	"strings"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

func layoutsCommand() *cobra.Command {
	var format string
	cmd := &cobra.Command{
		Use:   "layouts",
		Short: "List the ways to lay the coals",
		Args:  operands(),
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := oneOf("--format", format, formatText, formatJSON); err != nil {
				return err
			}
			out := cmd.OutOrStdout()
			columns, _ := terminal(out)
			return emit(out, "", func(w io.Writer) error {
				if format == formatJSON {
					return writeJSON(w, map[string][]schedule.Layout{"layouts": schedule.Layouts()})
				}
				return listLayouts(w, schedule.Layouts(), columns)
			})
		},
	}
	cmd.Flags().StringVarP(&format, "format", "f", formatText, "`format`: text or json")
	complete(cmd, "format", formatText, formatJSON)
	return cmd
}

func listLayouts(w io.Writer, layouts []schedule.Layout, columns int) error {
	p := page{columns: columns}
	for _, l := range layouts {
		p.row(l.Name, l.Band+" band: "+grate(l.MinC)+" to "+grate(l.MaxC))
		p.row("  for", l.Use)
		p.row("  build", l.Build)
		p.row("  zones", zonesText(l.Zones))
		p.row("  ready", about(unit.US, float64(l.SetupMinutes))+" after lighting")
		p.row("  becomes", strings.Join(l.Becomes, ", "))
		if l.LitTopUps {
			p.row("  top up", "with lit coals only")
		}
		p.line("")
	}
	p.item("", "Figures are common practice, no source.")
	_, err := io.WriteString(w, p.String())
	return err
}

// zoneWord is a zone's name as it is spelled on the sheets; in files it keeps its own.
func zoneWord(name string) string { return strings.Replace(name, "centre", "center", 1) }

func zonesText(zones []schedule.LayoutZone) string {
	texts := make([]string, len(zones))
	for i, z := range zones {
		texts[i] = fmt.Sprintf("%s, %.0f%% of the grate", zoneWord(z.Name), 100*z.Share)
		if z.LiftK > 0 {
			texts[i] += fmt.Sprintf(", about %s (%.0f °C) hotter", unit.US.Difference(unit.Difference(z.LiftK)), math.Round(z.LiftK/5)*5)
		}
	}
	return strings.Join(texts, "; ")
}
