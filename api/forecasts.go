package api

import (
	"bytes"
	"context"
	"encoding/csv"
	"errors"
	"net/http"
	"slices"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/export"
)

// maxFieldSigns is far above what an object of plain values has.
const maxFieldSigns = 500

// getForecast answers for one piece; the query says which, format=csv asks for a line
// that a spreadsheet can take, field=... for the one value that its cell shows.
func (s *Service) getForecast(c *call) error {
	fields, err := c.parameters(append(schedule.InquiryFields(), "format", "field")...)
	if err != nil {
		return err
	}
	format, field := fields["format"], fields["field"]
	delete(fields, "format")
	delete(fields, "field")
	err = s.forecast(c, fields, nil, format, field)
	var input *schedule.InputError
	if errors.As(err, &input) {
		return inputProblem(input, true)
	}
	return err
}

// postForecast is getForecast with the names in a JSON object; own in it is the record of the grill, as learning gives it.
func (s *Service) postForecast(c *call) error {
	got, err := c.parameters("format", "field")
	if err != nil {
		return err
	}
	data, _, err := c.body(maxFieldSigns, typeJSON)
	if err != nil {
		return err
	}
	fields, record, err := flatJSON(data, ownField)
	if err != nil {
		return err
	}
	own, err := ownOf(record)
	if err != nil {
		return err
	}
	return s.forecast(c, fields, own, got["format"], got["field"])
}

// ownField is the record of one's own grill in the body of a forecast.
const ownField = "own"

// ownOf reads it; nil stands for none.
func ownOf(record []byte) (*schedule.OwnGrill, error) {
	if record == nil {
		return nil, nil
	}
	own, err := schedule.ReadOwnGrill(record)
	var input *schedule.InputError
	if errors.As(err, &input) {
		for i, f := range input.Faults {
			input.Faults[i].Path = strings.TrimSuffix(ownField+"."+f.Path, ".")
		}
	}
	return &own, err
}

func (s *Service) forecast(c *call, fields map[string]string, own *schedule.OwnGrill, format, field string) error {
	kind, err := c.outlookType(format, field)
	if err != nil {
		return err
	}
	q, err := schedule.ReadInquiry(fields)
	if err != nil {
		return err
	}
	q.Own = own
	var o schedule.Outlook
	err = s.within(c.r.Context(), s.gates.forecast, func(ctx context.Context) (err error) {
		o, err = s.cfg.Planner.Forecast(ctx, q)
		return err
	})
	if err != nil {
		return err
	}
	c.header().Add(headerVary, headerAccept)
	if kind == typeJSON {
		return c.sendJSON(http.StatusOK, o)
	}
	var b bytes.Buffer
	if err := export.ForecastCSV(&b, o); err != nil {
		return err
	}
	if field != "" {
		return c.sendField(b.Bytes(), field)
	}
	return c.send(http.StatusOK, &content{kind: "text/csv; charset=utf-8; header=present", body: b.Bytes()})
}

// sendField answers with one column of a table of one line.
func (c *call) sendField(table []byte, field string) error {
	rows, err := csv.NewReader(bytes.NewReader(table)).ReadAll()
	if err != nil || len(rows) != 2 {
		return errors.Join(err, errors.New("a forecast is not one line"))
	}
	i := slices.Index(rows[0], field)
	if i < 0 {
		return queryFault("field", "is a column of the forecast; this one has "+strings.Join(rows[0], ", "))
	}
	return c.send(http.StatusOK, &content{kind: "text/plain; charset=utf-8", body: []byte(rows[1][i] + "\n")})
}

// outlookType is the media type of the answer: by the parameter field or format, else by
// Accept.
func (c *call) outlookType(format, field string) (string, error) {
	switch {
	case field != "" && format != "":
		return "", queryFault("field", "is answered as plain text; leave format out")
	case field != "":
		return "text/plain", nil
	case format == "json":
		return typeJSON, nil
	case format == "csv":
		return typeCSV, nil
	case format != "":
		return "", queryFault("format", "is json or csv")
	}
	kind := negotiate(c.accept(), []string{typeJSON, typeCSV})
	if kind == "" {
		return "", problem("not-acceptable", "A forecast can be had as "+typeJSON+" or "+typeCSV+".")
	}
	return kind, nil
}
