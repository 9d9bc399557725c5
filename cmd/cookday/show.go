package main

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/export"
)

// Formats of a plan.
const (
	formatText = "text"
	formatJSON = "json"
	formatCSV  = "csv"
	formatICS  = "ics"
	formatSVG  = "svg"
	formatHTML = "html"
)

// show is how a plan is to be printed.
type show struct {
	format, out, picture, table, now string

	brief int
}

// planFormats are the formats in the order the help lists them.
var planFormats = []string{formatText, formatJSON, formatCSV, formatICS, formatSVG, formatHTML}

// suffixes are the formats that a file name asks for by its end.
var suffixes = map[string]string{".txt": formatText, ".json": formatJSON, ".csv": formatCSV, ".ics": formatICS, ".svg": formatSVG, ".html": formatHTML}

func (s *show) addFlags(cmd *cobra.Command) {
	f := cmd.Flags()
	f.StringVarP(&s.format, "format", "f", "", "`format`: text, json, csv, ics, svg or html (if not given: as the name of --out ends, else text)")
	f.StringVarP(&s.out, "out", "o", "", "`file` to write, instead of standard output")
	f.StringVar(&s.picture, "picture", export.PictureTimeline, "`picture` with svg: timeline, curves or grate")
	f.StringVar(&s.table, "table", export.TableSteps, "`table` with csv: steps or dishes")
	f.IntVar(&s.brief, "brief", 0, "with text: only the next `steps`, five if no number is given")
	f.Lookup("brief").NoOptDefVal = "5"
	complete(cmd, "format", planFormats...)
	complete(cmd, "picture", export.PictureTimeline, export.PictureCurves, export.PictureGrate)
	complete(cmd, "table", export.TableSteps, export.TableDishes)
}

// complete offers values of a flag to the shell.
func complete(cmd *cobra.Command, flag string, values ...string) {
	completeBy(cmd, flag, cobra.FixedCompletions(values, cobra.ShellCompDirectiveNoFileComp))
}

func completeBy(cmd *cobra.Command, flag string, offer cobra.CompletionFunc) {
	if err := cmd.RegisterFlagCompletionFunc(flag, offer); err != nil {
		panic(err) // the flag does not exist: a slip in this program
	}
}

// check looks at the flags before any work is done.
func (s *show) check() error {
	if s.format == "" {
		ending := strings.ToLower(filepath.Ext(s.out))
		format, known := suffixes[ending]
		switch {
		case known:
			s.format = format
		case ending == "":
			s.format = formatText
		default:
			return usage("--out: %s has an ending that no format has; end in .txt, .json, .csv, .ics, .svg or .html, or give --format", s.out)
		}
	}
	return firstError(
		oneOf("--format", s.format, planFormats...),
		oneOf("--picture", s.picture, export.PictureTimeline, export.PictureCurves, export.PictureGrate),
		oneOf("--table", s.table, export.TableSteps, export.TableDishes),
		atLeastZero("--brief", s.brief),
	)
}

func firstError(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func oneOf(flag, value string, values ...string) error {
	if slices.Contains(values, value) {
		return nil
	}
	last := len(values) - 1
	return usage("%s: %q is not %s or %s", flag, value, strings.Join(values[:last], ", "), values[last])
}

func atLeastZero(flag string, n int) error {
	if n < 0 {
		return usage("%s: %d is no number of steps; use 1 or more", flag, n)
	}
	return nil
}

// plan prints a plan; an infeasible one too, and then says so by its error.
func (s *show) plan(cmd *cobra.Command, p schedule.Plan) error {
	o, err := s.options(cmd.OutOrStdout(), p)
	if err != nil {
		return err
	}
	err = emit(cmd.OutOrStdout(), s.out, func(w io.Writer) error { return s.write(w, p, o) })
	if err == nil && !p.Feasible {
		return errInfeasible
	}
	return err
}

func (s *show) options(stdout io.Writer, p schedule.Plan) (export.Options, error) {
	o := export.Options{Width: usualColumns, Brief: s.brief, Picture: s.picture}
	if s.out == "" {
		o.Width, o.Colour = terminal(stdout)
	}
	if s.now == "" {
		return o, nil
	}
	now, err := instant("--now", s.now, p)
	o.Now = now
	return o, err
}

func (s *show) write(w io.Writer, p schedule.Plan, o export.Options) error {
	switch s.format {
	case formatText:
		return export.Text(w, p, o)
	case formatJSON:
		return export.JSON(w, p)
	case formatCSV:
		return export.CSV(w, p, s.table)
	case formatICS:
		return export.Calendar(w, p)
	case formatSVG:
		return export.Picture(w, p, o)
	case formatHTML:
		return export.Sheet(w, p, o)
	}
	return fmt.Errorf("no writer for the format %q", s.format)
}
