package api

import (
	"bytes"
	"context"
	"errors"
	"net/http"
	"strings"

	"github.com/labstack/echo/v4"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/export"
)

// getForecast answers for one piece; the query says which, and format=csv asks
// for a line that a spreadsheet can take.
func (s *Service) getForecast(c echo.Context) error {
	fields, err := parameters(c, append(schedule.InquiryFields(), "format")...)
	if err != nil {
		return err
	}
	format := fields["format"]
	delete(fields, "format")
	err = s.forecast(c, fields, format)
	var input *schedule.InputError
	if errors.As(err, &input) {
		return inputProblem(input, true)
	}
	return err
}

// postForecast is getForecast with the names in a JSON object.
func (s *Service) postForecast(c echo.Context) error {
	got, err := parameters(c, "format")
	if err != nil {
		return err
	}
	data, _, err := body(c, typeJSON)
	if err != nil {
		return err
	}
	fields, err := flatJSON(data)
	if err != nil {
		return err
	}
	return s.forecast(c, fields, got["format"])
}

func (s *Service) forecast(c echo.Context, fields map[string]string, format string) error {
	kind, err := outlookType(c, format)
	if err != nil {
		return err
	}
	q, err := schedule.ReadInquiry(fields)
	if err != nil {
		return err
	}
	var o schedule.Outlook
	err = s.solve(c.Request().Context(), func(ctx context.Context) (err error) {
		o, err = s.cfg.Planner.Forecast(ctx, q)
		return err
	})
	if err != nil {
		return err
	}
	c.Response().Header().Add(echo.HeaderVary, echo.HeaderAccept)
	if kind == typeJSON {
		return sendJSON(c, http.StatusOK, o)
	}
	var b bytes.Buffer
	if err := export.ForecastCSV(&b, o); err != nil {
		return err
	}
	return send(c, http.StatusOK, "text/csv; charset=utf-8; header=present", b.Bytes())
}

// outlookType is the media type of the answer: by the parameter format, else by Accept.
func outlookType(c echo.Context, format string) (string, error) {
	switch format {
	case "json":
		return typeJSON, nil
	case "csv":
		return typeCSV, nil
	case "":
	default:
		return "", queryFault("format", "is json or csv")
	}
	kind := negotiate(strings.Join(c.Request().Header.Values(echo.HeaderAccept), ","), []string{typeJSON, typeCSV})
	if kind == "" {
		return "", problem("not-acceptable", "A forecast can be had as "+typeJSON+" or "+typeCSV+".")
	}
	return kind, nil
}
