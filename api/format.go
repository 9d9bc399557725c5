package api

import (
	"io"
	"slices"
	"strings"

	"github.com/labstack/echo/v4"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/export"
)

// format is a way to write a plan.
type format struct {
	suffix, mediaType, contentType string
	render                         func(w io.Writer, p schedule.Plan) error // nil for the JSON that is kept
}

// formats lists what a plan can be had as, best first.
func formats(table, picture string) []format {
	return []format{
		{".json", typeJSON, typeJSON, nil},
		{".html", "text/html", "text/html; charset=utf-8", func(w io.Writer, p schedule.Plan) error { return export.Sheet(w, p, export.Options{}) }},
		{".ics", "text/calendar", "text/calendar; charset=utf-8", export.Calendar},
		{".csv", typeCSV, "text/csv; charset=utf-8; header=present", func(w io.Writer, p schedule.Plan) error { return export.CSV(w, p, table) }},
		{".svg", "image/svg+xml", "image/svg+xml", func(w io.Writer, p schedule.Plan) error { return drawn(w, p, picture) }},
		{".txt", "text/plain", "text/plain; charset=utf-8", func(w io.Writer, p schedule.Plan) error { return export.Text(w, p, export.Options{}) }},
	}
}

var (
	tables   = []string{export.TableSteps, export.TableDishes}
	pictures = []string{export.PictureTimeline, export.PictureCurves, export.PictureGrate}
)

// formatFor picks the format by suffix, or by Accept if there is none.
func formatFor(c echo.Context, suffix string, got map[string]string) (format, error) {
	table, picture := got["table"], got["picture"]
	standsFor(&table, tables[0])
	standsFor(&picture, pictures[0])
	switch {
	case !slices.Contains(tables, table):
		return format{}, queryFault("table", "is one of "+strings.Join(tables, ", "))
	case !slices.Contains(pictures, picture):
		return format{}, queryFault("picture", "is one of "+strings.Join(pictures, ", "))
	}
	list := formats(table, picture)
	for _, f := range list {
		if suffix == f.suffix {
			return f, nil
		}
	}
	if suffix != "" {
		return format{}, problem("not-found", "A plan can be had as .json, .html, .ics, .csv, .svg or .txt.")
	}
	types := make([]string, len(list))
	for i, f := range list {
		types[i] = f.mediaType
	}
	i := slices.Index(types, negotiate(strings.Join(c.Request().Header.Values(echo.HeaderAccept), ","), types))
	if i < 0 {
		return format{}, problem("not-acceptable", "A plan can be had as "+strings.Join(types, ", ")+".")
	}
	return list[i], nil
}

func drawn(w io.Writer, p schedule.Plan, picture string) error {
	if picture == export.PictureCurves && !export.HasCurves(p) {
		return problem("not-found", "This plan has no curves to draw.")
	}
	return export.Picture(w, p, export.Options{Picture: picture})
}
