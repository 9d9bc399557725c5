package api

import (
	"bytes"
	"context"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"encoding/json"
	"html/template"
	"net/http"
	"strings"
	"sync"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/export"
)

// The sheet, live: the page on which a cook follows the day. At the owner's address it
// has forms to log with, which need no script; at the feed's it has none.

//go:embed sheet.html
var sheetText string

//go:embed sheet.js
var sheetScript string

// What only the live sheet needs is made when it is first asked for: the other commands of
// the program start without it.
var sheetTemplate = sync.OnceValue(func() *template.Template { return template.Must(template.New("sheet").Parse(sheetText)) })

// sheetPolicy lets the page use its own style, its own script and this service, and
// nothing else; nobody may frame it, where a press on a button could be stolen.
var sheetPolicy = sync.OnceValue(func() string {
	sum := sha256.Sum256([]byte(sheetScript))
	return "default-src 'none'; style-src 'unsafe-inline'; img-src data:; script-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) +
		"'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
})

// sendSheet writes a live sheet. Its address is a secret, but a browser that is not to
// say where a form was sent from says that it comes from nowhere: within the service it may.
func (c *call) sendSheet(status int, k *content) error {
	h := c.header()
	h.Add(headerVary, headerAccept)
	h.Set(headerPolicy, sheetPolicy())
	h.Set("Referrer-Policy", "same-origin")
	return c.send(status, k)
}

// getSheet answers with the live sheet of the newest revision.
func (s *Service) getSheet(c *call, record Record, shown string, feed bool) error {
	k, err := s.sheet(c.r.Context(), record, shown, feed, nil)
	if err != nil {
		return err
	}
	return c.sendSheet(http.StatusOK, k)
}

// refusal is a form that was not taken: why, and what was typed.
type refusal struct {
	why   []string
	typed map[string]string
}

// sheet draws the page, which stays the same for a minute of a revision.
func (s *Service) sheet(ctx context.Context, r Record, shown string, feed bool, refused *refusal) (*content, error) {
	minute := s.now().Truncate(time.Minute)
	key := pageKey{r.ID, shown, r.Newest, "live " + minute.UTC().Format(time.RFC3339)}
	if r.Trial {
		key.format = "live" // does not go by the clock
	}
	if k, ok := s.pages.get(key).(*content); ok && refused == nil {
		return k, nil
	}
	kept, err := s.cfg.Store.Newest(ctx, r.ID)
	if err != nil {
		return nil, err
	}
	var p schedule.Plan
	if err := json.Unmarshal(kept.JSON, &p); err != nil {
		return nil, err
	}
	f := sheetForms{plan: p, action: planPath(r.ID) + "/sheet", typed: map[string]string{}}
	if !feed {
		rows, err := s.cfg.Store.Readings(ctx, r.ID)
		if err != nil {
			return nil, err
		}
		if f.log, err = logOf(rows); err != nil {
			return nil, err
		}
	}
	p.ID = shown
	address := planPath(shown)
	if feed {
		address = feedPath(shown)
	}
	live, err := f.live(address, feed, refused)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if err := export.LiveSheet(&b, p, seenAt(&p, r.Trial, minute), live); err != nil {
		return nil, err
	}
	k := newContent("text/html; charset=utf-8", kept.Number, b.Bytes())
	if refused == nil && kept.Number == r.Newest {
		s.pages.put(key, k, k.size())
	}
	return k, nil
}

// seenAt is the instant that a page looks from. A trial has no clock but its log: before
// the first entry it is about to begin.
func seenAt(p *schedule.Plan, trial bool, now time.Time) time.Time {
	switch {
	case !trial:
		return now
	case p.RevisedAt != nil:
		return *p.RevisedAt
	case len(p.Steps) > 0:
		first := p.Steps[0].At
		for _, s := range p.Steps {
			if s.At.Before(first) {
				first = s.At
			}
		}
		return first
	}
	return p.ServeAt
}

// filled is a part of the page.
func filled(name string, data any) (template.HTML, error) {
	var b strings.Builder
	err := sheetTemplate().ExecuteTemplate(&b, name, data)
	return template.HTML(b.String()), err
}
