package api

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"net/url"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// Media types that are read or written.
const (
	typeJSON = "application/json"
	typeYAML = "application/yaml"
	typeCSV  = "text/csv"
)

// body reads the whole body of one of the types and says which one it is. It is
// refused if it has more signs than most.
func (c *call) body(most int, types ...string) (data []byte, kind string, err error) {
	h := c.r.Header
	kind = mediaType(h.Get(headerContentType))
	if !slices.Contains(types, kind) {
		return nil, "", problem("unsupported-type", "Set Content-Type to "+strings.Join(types, " or ")+", in UTF-8.")
	}
	if e := h.Get(headerEncoding); e != "" && !strings.EqualFold(e, "identity") {
		return nil, "", problem("unsupported-type", "Send the body as it is, without Content-Encoding.")
	}
	var b bytes.Buffer
	b.Grow(int(min(max(c.r.ContentLength, 0), firstBytes)) + bytes.MinRead)
	_, err = b.ReadFrom(c.r.Body)
	if err != nil && problemOf(err).Status == 500 { // a broken or slow client
		err = problem("bad-input", "The body ended before it was complete.")
	}
	if err == nil {
		err = scanned(b.Bytes(), most)
	}
	return b.Bytes(), kind, err
}

// firstBytes are what is made ready for a body at once, whatever its length is said to be.
const firstBytes = 64 << 10

// request reads the request of a day, which may name the plan it is for, if there is one.
// JSON must look like JSON, because the decoder of the library takes everything else for
// YAML.
func (s *Service) request(c *call, id string) (r schedule.Request, data []byte, err error) {
	data, kind, err := c.body(maxRequestSigns, typeJSON, typeYAML)
	if err != nil {
		return r, nil, err
	}
	if kind == typeJSON && !bytes.HasPrefix(bytes.TrimLeft(data, " \t\r\n"), []byte("{")) && len(bytes.TrimSpace(data)) > 0 {
		return r, nil, &schedule.InputError{Faults: []schedule.Fault{{Sentence: "the document is not a JSON object; it must begin with {, or Content-Type must be " + typeYAML, Line: 1}}}
	}
	err = s.within(c.r.Context(), s.gates.ofBody(data), func(context.Context) (err error) {
		r, err = schedule.Read(data)
		return err
	})
	if err == nil && r.ID != "" && r.ID != id {
		err = &schedule.InputError{Faults: []schedule.Fault{{Path: "id", Sentence: "is given by the service; leave it out"}}}
	}
	return r, data, err
}

// flatJSON reads an object of plain values as named texts: what a query says with
// a=b, a body says with "a": "b". A list of numbers is joined by commas. An object under the name whole is handed back as
// it is written, nil if there is none.
func flatJSON(data []byte, whole string) (fields map[string]string, object []byte, err error) {
	var faults []schedule.Fault
	fault := func(path, format string, a ...any) {
		faults = append(faults, schedule.Fault{Path: path, Sentence: fmt.Sprintf(format, a...)})
	}
	d := json.NewDecoder(bytes.NewReader(data))
	d.UseNumber()
	if open, err := d.Token(); err != nil || open != json.Delim('{') || !json.Valid(data) {
		fault("", "the document is not one JSON object")
		return nil, nil, &schedule.InputError{Faults: faults}
	}
	fields = map[string]string{}
	for d.More() && len(faults) < 20 {
		token, _ := d.Token() // the text is valid as a whole
		name := token.(string)
		var raw json.RawMessage
		if err := d.Decode(&raw); err != nil {
			fault(name, "cannot be read")
			continue
		}
		if name == whole && raw[0] == '{' {
			if object != nil {
				fault(name, "is given twice; keep one")
			}
			object = raw
			continue
		}
		text, ok := plainOf(raw)
		switch _, twice := fields[name]; {
		case len(name) > 40 || strings.ContainsAny(name, "\"\n\r"):
			fault("", "%.40q is not a field of a forecast", name)
		case twice:
			fault(name, "is given twice; keep one")
		case !ok:
			fault(name, "must be a text, a number, true or false, or a list of numbers")
		}
		fields[name] = text
	}
	if len(faults) > 0 {
		return nil, nil, &schedule.InputError{Faults: faults}
	}
	return fields, object, nil
}

func plainOf(raw json.RawMessage) (string, bool) {
	d := json.NewDecoder(bytes.NewReader(raw))
	d.UseNumber()
	var value any
	if d.Decode(&value) != nil {
		return "", false
	}
	return plain(value)
}

// plain is a JSON value as a query would have it.
func plain(value any) (string, bool) {
	switch v := value.(type) {
	case string:
		return v, true
	case json.Number:
		return v.String(), true
	case bool:
		return fmt.Sprint(v), true
	case []any:
		parts := make([]string, len(v))
		for i, item := range v {
			n, ok := item.(json.Number)
			if !ok {
				return "", false
			}
			parts[i] = n.String()
		}
		return strings.Join(parts, ","), len(parts) > 0
	}
	return "", false
}

// parameters reads the query: only the names given, each once.
func (c *call) parameters(names ...string) (map[string]string, error) {
	values, err := url.ParseQuery(c.r.URL.RawQuery)
	if err != nil {
		return nil, queryFault("", "the query cannot be read; escape it as RFC 3986 says")
	}
	got := map[string]string{}
	var faults []schedule.Fault
	for name, list := range values {
		switch {
		case !slices.Contains(names, name):
			faults = append(faults, schedule.Fault{Path: shortened(name), Sentence: "is not a parameter of this address; " + offer(names)})
		case len(list) > 1:
			faults = append(faults, schedule.Fault{Path: name, Sentence: "is given twice; keep one"})
		default:
			got[name] = list[0]
		}
	}
	if len(faults) > 0 {
		slices.SortFunc(faults, func(a, b schedule.Fault) int { return strings.Compare(a.Path, b.Path) })
		return nil, inputProblem(&schedule.InputError{Faults: faults[:min(len(faults), 20)]}, true)
	}
	return got, nil
}

func offer(names []string) string {
	if len(names) == 0 {
		return "it takes none"
	}
	return "it takes " + strings.Join(names, ", ")
}

func shortened(name string) string {
	if r := []rune(name); len(r) > 40 {
		return string(r[:40]) + "..."
	}
	return name
}

// instantOf reads a parameter in RFC 3339; zero if it is not there.
func instantOf(parameters map[string]string, name string) (time.Time, error) {
	text, ok := parameters[name]
	if !ok {
		return time.Time{}, nil
	}
	t, err := time.Parse(time.RFC3339, text)
	if err != nil || t.Year() < 1970 || t.Year() > 2200 {
		return t, queryFault(name, fmt.Sprintf("%.40q is not an instant such as 2027-07-03T18:00:00-05:00; write + as %%2B", text))
	}
	return t, nil
}

// yesNo reads a parameter that is true or false.
func yesNo(parameters map[string]string, name string) (bool, error) {
	switch text := parameters[name]; text {
	case "", "false":
		return false, nil
	case "true":
		return true, nil
	default:
		return false, queryFault(name, "is true or false")
	}
}
