package api

import (
	"io"
	"slices"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/export"
)

// format is a way to write a plan.
type format struct {
	suffix, mediaType, contentType string
	render                         func(w io.Writer, p schedule.Plan) error // nil for the JSON that is kept
	feed                           bool                                     // whoever has the feed may have it
	name                           string                                   // of the format with its table or picture
}

// suffixSheet is that of the page, which is live but for old revisions.
const suffixSheet = ".html"

// formats lists what a plan can be had as, best first.
func formats(table, picture string) []format {
	return []format{
		{".json", typeJSON, typeJSON, nil, false, "json"},
		{suffixSheet, "text/html", "text/html; charset=utf-8", func(w io.Writer, p schedule.Plan) error { return export.Sheet(w, p, export.Options{}) }, true, "html"},
		{".ics", "text/calendar", "text/calendar; charset=utf-8", export.Calendar, true, "ics"},
		{".csv", typeCSV, "text/csv; charset=utf-8; header=present", func(w io.Writer, p schedule.Plan) error { return export.CSV(w, p, table) }, false, "csv/" + table},
		{".svg", "image/svg+xml", "image/svg+xml", func(w io.Writer, p schedule.Plan) error { return drawn(w, p, picture) }, true, "svg/" + picture},
		{".txt", "text/plain", "text/plain; charset=utf-8", func(w io.Writer, p schedule.Plan) error { return export.Text(w, p, export.Options{}) }, true, "txt"},
	}
}

var (
	tables   = []string{export.TableSteps, export.TableDishes}
	pictures = []string{export.PictureTimeline, export.PictureCurves, export.PictureGrate}
)

// formatFor picks the format by suffix, or by Accept if there is none; of those that a
// feed has, if it is one.
func (c *call) formatFor(suffix string, feed bool, got map[string]string) (format, error) {
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
	if feed {
		list = slices.DeleteFunc(list, func(f format) bool { return !f.feed })
	}
	for _, f := range list {
		if suffix == f.suffix {
			return f, nil
		}
	}
	if suffix != "" {
		return format{}, problem("not-found", "It can be had as "+each(list, func(f format) string { return f.suffix })+".")
	}
	types := make([]string, len(list))
	for i, f := range list {
		types[i] = f.mediaType
	}
	i := slices.Index(types, negotiate(c.accept(), types))
	if i < 0 {
		return format{}, problem("not-acceptable", "It can be had as "+strings.Join(types, ", ")+".")
	}
	return list[i], nil
}

func each(list []format, of func(format) string) string {
	var all []string
	for _, f := range list {
		all = append(all, of(f))
	}
	return strings.Join(all, ", ")
}

// accept is the header Accept, all of it.
func (c *call) accept() string { return strings.Join(c.r.Header.Values(headerAccept), ",") }

func drawn(w io.Writer, p schedule.Plan, picture string) error {
	if picture == export.PictureCurves && !export.HasCurves(p) {
		return problem("not-found", "This plan has no curves to draw.")
	}
	return export.Picture(w, p, export.Options{Picture: picture})
}
