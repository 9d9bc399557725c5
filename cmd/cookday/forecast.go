package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// inquiryHelp explains the fields of an inquiry, which are the flags of forecast.
var inquiryHelp = map[string]string{
	"air":         "`temperature` outside: \"70 F\"",
	"altitude":    "`height` above the sea: \"5200 ft\"",
	"count":       "number of `pieces`: the times are for the slowest",
	"cut":         "`name` in the catalogue; cookday cuts lists them",
	"finish":      "`sear`, at the end",
	"grate":       "`temperature` beside the meat: \"250 F\"",
	"humidity":    "relative `humidity`: 50%",
	"layout":      "`layout` of the coals: banked, ring, two-zone, spread or heap",
	"prep":        "`words`, comma-separated: injected, stuffed, rolled, tenderized, brined",
	"probability": "`odds` to report times for, comma-separated: 0.5,0.95",
	"start":       "core `temperature` when it goes on: \"38 F\", or frozen",
	"target":      "core `temperature` at take-off: \"203 F\", a doneness of the cut, or final@130F for the peak while it rests",
	"thickness":   "`length` as measured: \"1.5 in\"",
	"units":       "`system` of the text: us or metric",
	"water-pan":   "a pan of water stands under the meat",
	"weight":      "`weight` of one piece: \"12 lb\"",
	"wrap":        "`wrap`: none, usual, foil, foil@150F, paper@160F, foil@4h (what is usual for the cut, if not given)",
}

func forecastCommand() *cobra.Command {
	var format, out, own string
	cmd := &cobra.Command{
		Use:   "forecast --cut NAME --weight WEIGHT",
		Short: "Say how long one piece takes, without a schedule",
		Long: `forecast says when one piece of meat reaches what, in minutes from putting it
on. One cook in ten is faster than early, one in ten slower than late. A piece
that never gets there is an answer too.`,
		Example: `  cookday forecast --cut brisket --weight "12 lb" --wrap foil@150F
  cookday forecast --cut burger --weight "6 oz" --format json`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 0 {
				return usage("cookday forecast: write it behind --cut: cookday forecast --cut %q --weight \"8 lb\"", strings.Join(args, " "))
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, _ []string) error { return forecast(cmd, own, format, out) },
	}
	f := cmd.Flags()
	for _, name := range schedule.InquiryFields() {
		if name == "water-pan" {
			f.Bool(name, false, inquiryHelp[name])
			continue
		}
		f.String(name, "", inquiryHelp[name])
	}
	f.StringVar(&own, "own", "", "`file` with the record of this grill, from cookday learn, or a request with own in its grill")
	f.StringVarP(&format, "format", "f", formatText, "`format`: text or json")
	f.StringVarP(&out, "out", "o", "", "`file` to write, instead of standard output")
	complete(cmd, "format", formatText, formatJSON)
	completeBy(cmd, "cut", completeCuts)
	complete(cmd, "layout", "banked", "ring", "two-zone", "spread", "heap")
	complete(cmd, "units", "us", "metric")
	return cmd
}

// forecast prints the answer to what the flags of a command ask.
func forecast(cmd *cobra.Command, own, format, out string) error {
	if err := oneOf("--format", format, formatText, formatJSON); err != nil {
		return err
	}
	q, err := schedule.ReadInquiry(changedFlags(cmd.Flags(), schedule.InquiryFields()))
	if err != nil {
		return err
	}
	if own != "" {
		if q.Own, err = readOwn(cmd, own); err != nil {
			return err
		}
	}
	o, err := planner.Forecast(cmd.Context(), q)
	if err != nil {
		return err
	}
	return emit(cmd.OutOrStdout(), out, func(w io.Writer) error {
		if format == formatJSON {
			return writeJSON(w, o)
		}
		columns, _ := terminal(cmd.OutOrStdout())
		return writeOutlook(w, q, o, columns)
	})
}

// changedFlags are the flags of these names that are on the command line.
func changedFlags(flags *pflag.FlagSet, names []string) map[string]string {
	given := map[string]string{}
	for _, name := range names {
		if f := flags.Lookup(name); f.Changed {
			given[name] = f.Value.String()
		}
	}
	return given
}

func writeJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		return fmt.Errorf("writing JSON: %w", err)
	}
	return nil
}
