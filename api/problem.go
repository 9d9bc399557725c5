package api

import (
	"context"
	"encoding/json"
	"errors"
	"log/slog"
	"net/http"
	"strconv"
	"strings"

	"example.com/cookday/schedule"
)

// typeBase begins the type of every problem. It is a name, not a page.
const typeBase = "https://example.com/cookday/problems/"

// Problem is a problem document (RFC 9457).
type Problem struct {
	Type     string         `json:"type"`
	Title    string         `json:"title"`
	Status   int            `json:"status"`
	Detail   string         `json:"detail,omitempty"`
	Instance string         `json:"instance,omitempty"` // the id of the request, as in its header
	Errors   []ProblemFault `json:"errors,omitempty"`
}

// ProblemFault is one thing wrong with the input.
type ProblemFault struct {
	Detail    string `json:"detail"`
	Pointer   string `json:"pointer"`             // JSON pointer into the body; "" for all of it
	Parameter string `json:"parameter,omitempty"` // of the query, instead of a place in the body
	Line      int    `json:"line,omitempty"`      // of the body, from 1
}

func (p *Problem) Error() string { return p.Title + ": " + p.Detail }

// Problems by name: their status and title. The title never changes.
var problemKinds = map[string]struct {
	status int
	title  string
}{
	"bad-input":        {http.StatusBadRequest, "The input has faults"},
	"forbidden":        {http.StatusForbidden, "This is not for everybody"},
	"past":             {http.StatusUnprocessableEntity, "The meal is past"},
	"clock":            {http.StatusUnprocessableEntity, "The instant is far from the service's clock"},
	"key-reused":       {http.StatusUnprocessableEntity, "The key was used for another body"},
	"log-full":         {http.StatusUnprocessableEntity, "The log is full"},
	"condition-needed": {http.StatusPreconditionRequired, "A condition is needed"},
	"no-room":          {http.StatusInsufficientStorage, "There is no room left"},
	"unauthorized":     {http.StatusUnauthorized, "A token is needed"},
	"not-found":        {http.StatusNotFound, "There is nothing here"},
	"method":           {http.StatusMethodNotAllowed, "The method does not fit the address"},
	"not-acceptable":   {http.StatusNotAcceptable, "No format that is asked for can be had"},
	"conflict":         {http.StatusConflict, "The plan was changed meanwhile"},
	"stale":            {http.StatusPreconditionFailed, "The plan is at another revision"},
	"too-large":        {http.StatusRequestEntityTooLarge, "The body is too large"},
	"too-many":         {http.StatusRequestEntityTooLarge, "The body has too many values"},
	"unsupported-type": {http.StatusUnsupportedMediaType, "The body has a type that is not read here"},
	"misdirected":      {http.StatusMisdirectedRequest, "The service does not answer to that name"},
	"busy":             {http.StatusServiceUnavailable, "The service is busy"},
	"fault":            {http.StatusInternalServerError, "The service failed"},
}

func problem(kind, detail string) *Problem {
	k := problemKinds[kind]
	return &Problem{Type: typeBase + kind, Title: k.title, Status: k.status, Detail: detail}
}

// inputProblem lists every fault. Faults of a query name their parameter.
func inputProblem(e *schedule.InputError, query bool) *Problem {
	p := problem("bad-input", "")
	for _, f := range e.Faults {
		f.Sentence = briefly(f.Sentence)
		fault := ProblemFault{Detail: f.Sentence, Pointer: pointer(f.Path), Line: f.Line}
		if query {
			fault.Parameter, fault.Pointer = f.Path, ""
		}
		p.Errors = append(p.Errors, fault)
	}
	p.Detail = briefly(e.Faults[0].String())
	if n := len(e.Faults) - 1; n > 0 {
		p.Detail += "; and " + strconv.Itoa(n) + " more"
	}
	return p
}

// queryFault is a problem with one parameter.
func queryFault(parameter, sentence string) *Problem {
	return inputProblem(&schedule.InputError{Faults: []schedule.Fault{{Path: parameter, Sentence: sentence}}}, true)
}

// problemOf finds the document for an error of a handler.
func problemOf(err error) *Problem {
	var (
		known   *Problem
		input   *schedule.InputError
		tooMuch *http.MaxBytesError
	)
	switch {
	case errors.As(err, &known):
		copied := *known
		return &copied
	case errors.As(err, &input):
		return inputProblem(input, false)
	case errors.Is(err, ErrNotFound):
		return problem("not-found", "There is no plan at this address; it may have been deleted.")
	case errors.Is(err, ErrConflict):
		return problem("conflict", "Somebody else revised the plan in the same moment; read it again and repeat the call.")
	case errors.As(err, &tooMuch):
		return problem("too-large", "At most 1 MiB is read.")
	case errors.Is(err, errBusy):
		return problem("busy", "Too many plans are being made; try again soon.")
	case errors.Is(err, context.DeadlineExceeded), errors.Is(err, context.Canceled):
		return problem("busy", "The call was given up before its answer was ready; try again, or ask for fewer dishes.")
	case errors.Is(err, ErrFull):
		return problem("no-room", "The disk of the service is full; nothing was kept.")
	case errors.Is(err, ErrAway):
		return problem("busy", "The store of plans does not answer; whether a change was kept is not known: read it before you repeat it.")
	case errors.Is(err, ErrReadOnly):
		return problem("busy", "The store of plans can be read and not written.")
	}
	return problem("fault", "This is a fault of the program; its log has more under the request's id.")
}

// answerProblem is the error handler of all routes.
func (s *Service) answerProblem(err error, c *call) {
	if c.w.status != 0 {
		return
	}
	p := problemOf(err)
	h := c.header()
	id := h.Get(headerRequestID)
	p.Instance = "urn:request:" + id
	switch p.Status {
	case http.StatusMethodNotAllowed:
		if allowed := h.Get("Allow"); strings.Contains(allowed, http.MethodGet) {
			h.Set("Allow", allowed+", "+http.MethodHead)
		}
	case http.StatusServiceUnavailable:
		h.Set(headerRetryAfter, "2")
	case http.StatusUnauthorized:
		h.Set("WWW-Authenticate", `Basic realm="cookday", charset="UTF-8"`) // calendars wait for this one
		h.Add("WWW-Authenticate", `Bearer realm="cookday"`)
	case http.StatusInternalServerError, http.StatusInsufficientStorage:
		s.cfg.Log.Error("fault", slog.String("request", id), slog.String("route", c.route), slog.String("error", cleanLine(err.Error())))
	}
	body, _ := json.Marshal(p) // strings and numbers only
	for _, name := range []string{headerLocation, headerLink, headerETag} {
		h.Del(name)
	}
	if err := c.send(p.Status, &content{kind: "application/problem+json", body: append(body, '\n')}); err != nil {
		s.cfg.Log.Debug("answer not sent", slog.String("request", id))
	}
}

// cleanLine keeps a foreign text on one line of the log.
func cleanLine(text string) string { return strings.NewReplacer("\n", " ", "\r", " ").Replace(text) }
