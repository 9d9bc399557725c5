package check

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"github.com/google/uuid"
)

// format: the parts that name and date the plan agree with the request.
func (c *checker) format() {
	p, req := c.plan, c.facts.req
	if p.Format != 1 {
		c.fault("format", "%d is not known; it is 1", p.Format)
	}
	if req.ID != "" && p.ID != req.ID {
		c.fault("id", "%q is not the id that the request sets, %q", p.ID, req.ID)
	} else if _, err := uuid.Parse(p.ID); req.ID == "" && err != nil {
		c.fault("id", "%q is no UUID", p.ID)
	}
	if p.TZ != req.Serve.TZ {
		c.fault("tz", "%q is not the time zone of the request, %q", p.TZ, req.Serve.TZ)
	}
	if p.Units != string(req.Units) {
		c.fault("units", "%q are not the units of the request, %q", p.Units, req.Units)
	}
	if p.Chance.Asked != req.Confidence {
		c.fault("chance.asked", "%g is not the confidence of the request, %g", p.Chance.Asked, req.Confidence)
	}
}

// provenance: the plan names its makers and belongs to the request it carries.
func (c *checker) provenance() {
	v := c.plan.Provenance
	if want := plans.Hash(c.plan.Request); v.RequestHash != want {
		c.fault("provenance.request_hash", "%q is not the hash of the request in the plan, %s", v.RequestHash, want)
	}
	if v.Catalogue == "" || v.Model == "" {
		c.fault("provenance", "catalogue %q and model %q must both be named", v.Catalogue, v.Model)
	}
}

// serving: the plan ends with the last serving instant of the request, and every
// dish is to be ready at its own.
func (c *checker) serving() {
	last := c.facts.clockAt(nil)
	for i := range c.facts.dishes {
		d := &c.facts.dishes[i]
		if at := c.facts.clockAt(d.ask.Serve); at.After(last) {
			last = at
		}
		if !d.plan.ServeAt.Equal(d.serve) {
			c.fault(d.path+".serve_at", "%s is not when the request wants it ready, %s", told(d.plan.ServeAt), told(d.serve))
		}
	}
	if !c.plan.ServeAt.Equal(last) {
		c.fault("serve_at", "%s is not the last serving instant of the request, %s", told(c.plan.ServeAt), told(last))
	}
}

// infeasible: a day that cannot be done has no steps and says why; a day that can
// be done has a way for every dish.
func (c *checker) infeasible() {
	p := c.plan
	if p.Feasible {
		if len(p.Steps) == 0 {
			c.fault("steps", "there are none in a plan that says feasible")
		}
		for _, d := range c.facts.dishes {
			if len(d.plan.Batches) == 0 {
				c.fault(d.path+".batches", "there are none in a plan that says feasible")
			}
		}
		return
	}
	if len(p.Steps) > 0 {
		c.fault("steps", "there are %d in a plan that says not feasible; nobody should follow them", len(p.Steps))
	}
	if len(p.Phases) > 0 || p.LightAt != nil || p.Fuel != nil {
		c.fault("phases", "a plan that says not feasible lights no fire")
	}
	if !slices.ContainsFunc(p.Findings, func(f schedule.Finding) bool { return f.Severity == schedule.Danger }) {
		c.fault("findings", "a plan that says not feasible has a finding of severity %s that says why", schedule.Danger)
	}
	if p.Chance.All != 0 {
		c.fault("chance.all", "%g in a plan that says not feasible; it is 0", p.Chance.All)
	}
}

// solution: what is said of the search does not contradict itself.
func (c *checker) solution() {
	s := c.plan.Solution
	want := []string{"optimal", "feasible"}
	if !c.plan.Feasible {
		want = []string{"infeasible", "unknown"}
	}
	if !slices.Contains(want, s.Status) {
		c.fault("solution.status", "%q in a plan with feasible %t; it is %s", s.Status, c.plan.Feasible, strings.Join(want, " or "))
	}
	if proven := s.Status == "optimal" || s.Status == "infeasible"; s.Proven != proven {
		c.fault("solution.proven", "%t with status %s; it is %t", s.Proven, s.Status, proven)
	}
	if sum := s.Hold + s.Mode + s.Change + s.Burn; s.Objective != sum {
		c.fault("solution.objective", "%d is not the sum of its parts, %d", s.Objective, sum)
	}
	if s.Bound > s.Objective && s.Status != "unknown" { // without a plan there is no objective
		c.fault("solution.bound", "%d is above the objective, %d", s.Bound, s.Objective)
	}
	if s.Status == "optimal" && s.Bound != s.Objective {
		c.fault("solution.bound", "%d differs from the objective, %d, in a plan that is proven", s.Bound, s.Objective)
	}
}

// findings: each has a code, a known severity, a text and dishes that exist.
func (c *checker) findings() {
	for i, f := range c.plan.Findings {
		path := fmt.Sprintf("findings[%d]", i)
		c.said(path, f.Code, f.Severity, f.Text)
		for _, id := range f.Dishes {
			if !c.hasDish(id) {
				c.fault(path+".dishes", "%q is no dish of the plan", id)
			}
		}
	}
}

func (c *checker) said(path, code string, severity schedule.Severity, text string) {
	if code == "" {
		c.fault(path+".code", "is empty")
	}
	if severity != schedule.Info && severity != schedule.Warning && severity != schedule.Danger {
		c.fault(path+".severity", "%q is not known; it is %s, %s or %s", severity, schedule.Info, schedule.Warning, schedule.Danger)
	}
	c.readable(path+".text", text)
}

func (c *checker) hasDish(id string) bool {
	for _, d := range c.facts.dishes {
		if d.plan.ID == id {
			return true
		}
	}
	return false
}

// readable: a text is there, and no value in it went wrong on the way.
func (c *checker) readable(path, text string) {
	if strings.TrimSpace(text) == "" {
		c.fault(path, "is empty; a person reads it")
	}
	for _, slip := range []string{"NaN", "Inf ", "%!", "<nil>", "0001-01-01"} {
		if strings.Contains(text, slip) {
			c.fault(path, "%q holds %q, which nobody can follow", text, slip)
		}
	}
}

// remedies: each is for a finding of the plan or none, says its price, and its
// edits are of the request.
func (c *checker) remedies() {
	for i, r := range c.plan.Remedies {
		path := fmt.Sprintf("remedies[%d]", i)
		c.readable(path+".text", r.Text)
		if len(r.Edits) == 0 {
			c.fault(path+".edits", "there are none; a remedy is a change of the request")
		}
		for j, e := range r.Edits {
			if e.Path == "" || !json.Valid([]byte(e.Value)) {
				c.fault(fmt.Sprintf("%s.edits[%d]", path, j), "path %q and value %q must be a field and a JSON value", e.Path, e.Value)
			}
		}
		if r.For != "" && !c.found(r.For, "") {
			c.fault(path+".for", "%q is no finding of the plan", r.For)
		}
		if r.Chance > 1 {
			c.fault(path+".chance", "%g is more than 1", r.Chance)
		}
		if c.plan.Revision == 0 && !c.plan.Feasible && i > 0 && r.Chance >= schedule.BadBet && c.plan.Remedies[i-1].Chance < schedule.BadBet {
			c.fault(path, "%.2f sure, and stands behind a bad bet", r.Chance)
		}
		if now := c.plan.RevisedAt; now != nil && r.ServeAt.Before(*now) {
			c.fault(path+".serve_at", "%s is past; it is %s", told(r.ServeAt), told(*now))
		}
		if r.LightAt != nil && r.LightAt.After(r.ServeAt) {
			c.fault(path+".light_at", "%s is after serving at %s", told(*r.LightAt), told(r.ServeAt))
		}
	}
}

// inSpan says whether t lies in [from, to].
func inSpan(t, from, to time.Time) bool { return !t.Before(from) && !t.After(to) }
