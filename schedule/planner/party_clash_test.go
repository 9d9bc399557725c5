package planner_test

import (
	"context"
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/planner/internal/ahead"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// document is a request as a program outside would hold it: JSON taken apart.
type document map[string]any

func documentOf(r schedule.Request) document { return taken(r.WithDefaults()) }

func (d document) copy() document { return taken(d) }

// taken apart, through JSON.
func taken(v any) document {
	text, err := json.Marshal(v)
	if err != nil {
		panic(err)
	}
	var d document
	if err := json.Unmarshal(text, &d); err != nil {
		panic(err)
	}
	return d
}

func (d document) request() (schedule.Request, error) {
	text, err := json.Marshal(d)
	if err != nil {
		return schedule.Request{}, err
	}
	return schedule.Read(text)
}

// plan makes the day of the document as Make does, without remedies; every plan must
// pass the judge.
func (d document) plan() (schedule.Plan, error) {
	r, err := d.request()
	if err != nil {
		return schedule.Plan{}, err
	}
	p, err := ahead.Plan(context.Background(), r, ahead.Effort{Effort: arrange.Effort{NoClash: true, Allowance: arrange.NewAllowance(arrange.FullAllowance)}})
	if err == nil && p.Feasible {
		if faults := check.Plan(p); len(faults) > 0 {
			return p, fmt.Errorf("the judge: %v", faults)
		}
	}
	return p, err
}

// only keeps the named dishes.
func (d document) only(ids []string) document {
	c := d.copy()
	c["dishes"] = slices.DeleteFunc(c["dishes"].([]any), func(dish any) bool {
		return !slices.Contains(ids, dish.(map[string]any)["id"].(string))
	})
	return c
}

// lifted is without a rule that a cook can let go of; false for the rules of the
// kitchen (hands, holds, room, the fire).
func (d document) lifted(rule string) (document, bool) {
	c := d.copy()
	fields := map[string]string{"quiet-hours": "quiet", "earliest": "earliest"}
	field := fields[rule]
	_, had := c[field]
	delete(c, field)
	for _, dish := range c["dishes"].([]any) {
		dish := dish.(map[string]any)
		_, own := dish[field]
		had = had || own
		delete(dish, field)
	}
	return c, had
}

// possible says whether the day can be had under all rules but some, if that is known.
func (d document) possible(lifted []string) (can, known bool) {
	r, err := d.request()
	if err != nil {
		return false, false
	}
	p, err := ahead.Plan(context.Background(), r, ahead.Effort{Effort: arrange.Effort{NoClash: true, FirstPlan: true, Lifted: lifted}})
	return p.Feasible, err == nil && (p.Feasible || p.Solution.Proven)
}

// set applies an edit: a null leaves the field out or takes the entry away, the
// index after the last one adds an entry.
func (d document) set(e schedule.Edit) error {
	var value any
	if err := json.Unmarshal([]byte(e.Value), &value); err != nil {
		return err
	}
	list, index, field := "", -1, e.Path
	if m := regexp.MustCompile(`^(\w+)\[(\d+)\](?:\.(\w+))?$`).FindStringSubmatch(e.Path); m != nil {
		list, field = m[1], m[3]
		index, _ = strconv.Atoi(m[2])
	}
	if list == "" {
		set(d, field, value)
		return nil
	}
	all, _ := d[list].([]any)
	switch {
	case index > len(all):
		return fmt.Errorf("%s: there are %d", e.Path, len(all))
	case field != "" && index < len(all):
		set(all[index].(map[string]any), field, value)
	case index == len(all):
		all = append(all, value)
	case value == nil:
		all = slices.Delete(all, index, index+1)
	default:
		all[index] = value
	}
	d[list] = all
	return nil
}

func set(in map[string]any, field string, value any) {
	if value == nil {
		delete(in, field)
		return
	}
	in[field] = value
}

// clashFaults looks from outside at what an infeasible plan claims: each clash
// cannot be had by itself, and can be had without any one of its members.
func clashFaults(d document, p schedule.Plan) []string {
	var faults []string
	for _, f := range p.Findings {
		if !slices.Contains([]string{"clash", "never-arrives", "no-room"}, f.Code) {
			continue
		}
		core := d.only(f.Dishes)
		for _, rule := range []string{"quiet-hours", "earliest"} {
			if f.Code == "clash" && !slices.Contains(f.Rules, rule) {
				core, _ = core.lifted(rule)
			}
		}
		if q, err := core.plan(); err != nil || q.Feasible {
			faults = append(faults, fmt.Sprintf("%s %v: feasible alone (%v)", f.Code, f.Dishes, err))
			continue
		}
		if strings.Contains(f.Text, "may be") {
			continue
		}
		if f.Code == "clash" {
			faults = append(faults, ruleFaults(core, f)...)
			if len(f.Rules) == 0 || !strings.Contains(f.Text, "won't work: ") && !strings.Contains(f.Text, "won't work together: ") {
				faults = append(faults, fmt.Sprintf("clash %v names no reason: %q", f.Dishes, f.Text))
			}
		}
		for i := range f.Dishes {
			fewer := slices.Delete(slices.Clone(f.Dishes), i, i+1)
			if len(fewer) == 0 {
				continue
			}
			if q, err := core.only(fewer).plan(); err != nil || !q.Feasible {
				faults = append(faults, fmt.Sprintf("%s %v: infeasible without %s (%v)", f.Code, f.Dishes, f.Dishes[i], err))
			}
		}
		for _, rule := range f.Rules {
			if fewer, ok := core.lifted(rule); ok {
				if q, err := fewer.plan(); err != nil || !q.Feasible {
					faults = append(faults, fmt.Sprintf("%s %v: infeasible without %s (%v)", f.Code, f.Dishes, rule, err))
				}
			}
		}
	}
	return faults
}

// ruleFaults looks at what a clash says of the kitchen: under the rules that it names
// alone the dishes cannot be had, and without any one of them they can.
func ruleFaults(core document, f schedule.Finding) []string {
	var idle, faults []string
	for _, rule := range arrange.KitchenRules {
		if !slices.Contains(f.Rules, rule) {
			idle = append(idle, rule)
		}
	}
	if can, known := core.possible(idle); can && known {
		faults = append(faults, fmt.Sprintf("clash %v: feasible under %v alone", f.Dishes, f.Rules))
	}
	for _, rule := range f.Rules {
		if !slices.Contains(arrange.KitchenRules, rule) {
			continue
		}
		if can, known := core.possible(append(slices.Clone(idle), rule)); !can && known {
			faults = append(faults, fmt.Sprintf("clash %v: infeasible without %s", f.Dishes, rule))
		}
	}
	return faults
}

// remedyFaults applies the edits of the remedies to the document and makes the
// day anew: it can be had, and is the day that the remedy tells of.
func remedyFaults(d document, remedies []schedule.Remedy) []string {
	var faults []string
	for _, rem := range remedies {
		if r, err := d.request(); err == nil {
			faults = append(faults, twiceFaults(rem, r)...)
		}
		mended := d.copy()
		for _, e := range rem.Edits {
			if err := mended.set(e); err != nil {
				faults = append(faults, fmt.Sprintf("remedy %q: %v", rem.Text, err))
			}
		}
		if _, oven := mended["oven"]; oven && bakes.MatchString(rem.Text) {
			faults = append(faults, fmt.Sprintf("remedy %q bakes in the oven in which it holds: %v", rem.Text, rem.Edits))
		}
		p, err := mended.plan()
		switch {
		case err != nil:
			faults = append(faults, fmt.Sprintf("remedy %q: %v", rem.Text, err))
		case !p.Feasible:
			faults = append(faults, fmt.Sprintf("remedy %q %v: no plan: %v", rem.Text, rem.Edits, p.Findings))
		case !sameInstant(rem.LightAt, p.LightAt) || !rem.ServeAt.Equal(plans.TableAt(p)) || rem.Chance != p.Chance.All || rem.Cost != p.Solution.Objective:
			faults = append(faults, fmt.Sprintf("remedy %q says light %v, table %v, chance %v, cost %d; the plan %v, %v, %v, %d (%s)", rem.Text,
				rem.LightAt, rem.ServeAt, rem.Chance, rem.Cost, p.LightAt, plans.TableAt(p), p.Chance.All, p.Solution.Objective, p.Solution.Status))
		}
	}
	return faults
}

var bakes = regexp.MustCompile(`Cook [^.]* in the kitchen oven\.`)

func sameInstant(a, b *time.Time) bool { return a == b || a != nil && b != nil && a.Equal(*b) }
