package check

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

var (
	requestType = reflect.TypeFor[schedule.Request]()
	timeType    = reflect.TypeFor[time.Time]()
)

// walk visits every value of the plan but its request, with its JSON path.
func (c *checker) walk(visit func(path string, v reflect.Value)) {
	walkValue("", reflect.ValueOf(c.plan).Elem(), visit)
}

func walkValue(path string, v reflect.Value, visit func(string, reflect.Value)) {
	if v.Type() == requestType {
		return
	}
	visit(path, v)
	switch {
	case v.Kind() == reflect.Pointer && !v.IsNil():
		walkValue(path, v.Elem(), visit)
	case v.Kind() == reflect.Slice:
		for i := range v.Len() {
			walkValue(fmt.Sprintf("%s[%d]", path, i), v.Index(i), visit)
		}
	case v.Kind() == reflect.Struct && v.Type() != timeType:
		for i := range v.NumField() {
			name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
			if path != "" {
				name = path + "." + name
			}
			walkValue(name, v.Field(i), visit)
		}
	}
}

// finite: every number is one, and what is an amount is not negative.
func (c *checker) finite() {
	c.walk(func(path string, v reflect.Value) {
		switch v.Kind() {
		case reflect.Float64:
			x := v.Float()
			if math.IsNaN(x) || math.IsInf(x, 0) {
				c.fault(path, "%v is no number", x)
			} else if x < 0 && isAmount(path) {
				c.fault(path, "%g is less than nothing; an amount is 0 or more", x)
			}
		case reflect.Int:
			if x := v.Int(); x < 0 {
				c.fault(path, "%d is less than nothing; a count is 0 or more", x)
			}
		}
	})
}

// isAmount says whether a field holds something that cannot be negative, by the
// unit in its name. A change of a plan may well be of negative minutes.
func isAmount(path string) bool {
	if strings.HasPrefix(path, "changes") || strings.Contains(path, ".changes[") {
		return false
	}
	field := path[strings.LastIndex(path, ".")+1:]
	for _, end := range []string{"minutes", "_kg", "_m2", "thickness_m", "width_m", "length_m", "arc_m", "chimneys", "chance", "early", "expected", "late"} {
		if strings.HasSuffix(field, end) {
			return true
		}
	}
	return false
}

// instants: every instant is set and has the offset of the request's time zone.
func (c *checker) instants() {
	c.walk(func(path string, v reflect.Value) {
		if v.Type() != timeType {
			return
		}
		t := v.Interface().(time.Time)
		if t.IsZero() {
			c.fault(path, "the instant is not set")
			return
		}
		_, has := t.Zone()
		if _, want := t.In(c.facts.loc).Zone(); has != want {
			c.fault(path, "%s has another offset than %s has then, %s", t.Format(time.RFC3339), c.facts.req.Serve.TZ, t.In(c.facts.loc).Format("-07:00"))
		}
	})
}

// windows: early, expected, late in that order; intervals end after they begin.
func (c *checker) windows() {
	c.walk(func(path string, v reflect.Value) {
		switch w := v.Interface().(type) {
		case schedule.Window:
			if w.Early.After(w.Expected) || w.Expected.After(w.Late) {
				c.fault(path, "early %s, expected %s and late %s are not in that order", told(w.Early), told(w.Expected), told(w.Late))
			}
		case schedule.Minutes:
			if w.Early > w.Expected || w.Expected > w.Late {
				c.fault(path, "early %.1f, expected %.1f and late %.1f minutes are not in that order", w.Early, w.Expected, w.Late)
			}
		case schedule.Interval:
			if !w.To.After(w.From) {
				c.fault(path, "ends at %s, not after its beginning at %s", told(w.To), told(w.From))
			}
		}
	})
}
