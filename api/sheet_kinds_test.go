package api

import (
	"net/http"
	"strings"
	"testing"

	"example.com/cookday/schedule"
)

// offTheSheet are kinds of entries without a form, and why.
var offTheSheet = map[schedule.EntryKind]string{
	schedule.LogServingMoved:  "the request is changed in place",
	schedule.LogDishAdded:     "the request is changed in place",
	schedule.LogDishCancelled: "the request is changed in place",
	schedule.LogLevel:         "a remedy does it, or the vents tell",
	schedule.LogWind:          "rare, and told by the weather of the request",
}

// TestEveryKindOfEntryHasAForm: what a plan may ask a cook to log can be logged on the
// sheet, the coldest place of a probe above all: it alone settles what is dangerous.
func TestEveryKindOfEntryHasAForm(t *testing.T) {
	_, clock, h, p := burgersUnderWay(t)
	page := pageOf(t, h, p)
	for _, f := range schedule.EntryForms() {
		kind := string(f.Kind)
		there := strings.Contains(page, `value="`+kind+`"`) || strings.Contains(page, `value="`+kind+" ")
		if why := offTheSheet[f.Kind]; there == (why != "") {
			t.Errorf("%s: a form is there: %v; left out because %q", kind, there, why)
		}
	}
	clock.set("2027-07-03T17:50:00-05:00")
	for _, form := range [][]string{
		{"of", "coldest burgers", "degrees", "88"}, {"of", "oven", "degrees", "200"}, {"did", "lit-coals", "value", "20"},
		{"did", "ash-cleared"}, {"did", "lid-closed"}, {"did", "vents", "top", "1/2", "bottom", "shut"},
	} {
		if a := ask(t, h, http.MethodPost, "/v1/plans/"+p.ID+"/sheet", filledIn(form...), asForm...); a.StatusCode != http.StatusSeeOther {
			t.Errorf("%v: %d %s", form, a.StatusCode, a.body)
		}
	}
	page = pageOf(t, h, p)
	for _, want := range []string{"Burgers: coldest place of a probe pushed all through 88 °F", "5:50 PM oven 200 °F", "Lit coals on (20)", "5:50 PM Ash cleared", "5:50 PM Lid closed", "5:50 PM The vents (top"} {
		if !strings.Contains(page, want) {
			t.Errorf("the log on the page lacks %q", want)
		}
	}
}
