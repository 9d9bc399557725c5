package api

import (
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

var asForm = []string{"Content-Type", typeForm}

func filledIn(pairs ...string) []byte {
	v := url.Values{}
	for i := 0; i < len(pairs); i += 2 {
		v.Set(pairs[i], pairs[i+1])
	}
	return []byte(v.Encode())
}

// pageOf is the live sheet of a plan.
func pageOf(t *testing.T, h http.Handler, p schedule.Plan) string {
	t.Helper()
	a := ask(t, h, http.MethodGet, "/v1/plans/"+p.ID+".html", nil)
	if a.StatusCode != http.StatusOK {
		t.Fatalf("%d %s", a.StatusCode, a.body)
	}
	return string(a.body)
}

// A cook follows a day by the forms alone: eight entries, one of them taken back.
func TestADayByForms(t *testing.T) {
	_, clock, h, p := burgersUnderWay(t)
	send := func(at string, pairs ...string) {
		t.Helper()
		clock.set("2027-07-03T" + at + "-05:00")
		a := ask(t, h, http.MethodPost, "/v1/plans/"+p.ID+"/sheet", filledIn(pairs...), asForm...)
		if a.StatusCode != http.StatusSeeOther || a.Header.Get("Location") != "/v1/plans/"+p.ID+".html" {
			t.Fatalf("%v: %d %s", pairs, a.StatusCode, a.body)
		}
	}
	before := pageOf(t, h, p)
	send("17:13:20", "did", "lit", "clock", "17:11")
	send("17:20:00", "of", "grate", "degrees", "210")
	send("17:24:00", "of", "gauge", "degrees", "300 F")
	send("17:28:00", "of", "grate", "degrees", "495,5")
	send("17:30:00", "did", "lid-opened")
	send("17:44:00", "did", "on", "dish", "burgers")
	send("17:48:00", "of", "core burgers", "degrees", "92")
	send("17:55:00", "did", "pulled", "dish", "burgers")
	page := pageOf(t, h, p)
	for _, want := range []string{"5:55 PM Burgers: Off, done", "5:48 PM Burgers: core 92", "5:44 PM Burgers: On the grill", "5:28 PM grate 496", "5:11 PM Lit", "It is 5:55 PM."} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	if before == page {
		t.Error("nothing has moved")
	}
	id := regexp.MustCompile(`name="take" value="(\d+)" aria-label="Take back: 5:55 PM`).FindStringSubmatch(page)
	if id == nil {
		t.Fatal("there is no button to take the last entry back")
	}
	send("17:56:00", "take", id[1])
	if strings.Contains(pageOf(t, h, p), "5:55 PM Burgers") {
		t.Error("the entry is still there")
	}
	kept := planIn(t, ask(t, h, http.MethodGet, "/v1/plans/"+p.ID, nil))
	if len(kept.Log) != 7 || kept.Revision != 9 {
		t.Errorf("%d entries, revision %d", len(kept.Log), kept.Revision)
	}
}

// What is to be done stands above all else, with its reason and a button that says it is
// done; a thumb that slips logs it once.
func TestWhatToDoNowComesFirst(t *testing.T) {
	_, clock, h, p := burgersUnderWay(t)
	var on schedule.Step
	for _, s := range p.Steps {
		if s.Kind == schedule.StepPutOn {
			on = s
		}
	}
	clock.set(on.At.Format(time.RFC3339))
	page := pageOf(t, h, p)
	order := []string{"<h2>Do now</h2>", "Burgers: onto the grate", "Done: it is on", "<h2>Next</h2>", "<h2>Not logged yet</h2>", "Done: it is lit", "<h2>Safety</h2>", "<h2>Log it</h2>", "<h2>The day</h2>", "The day as a picture</summary>", "More on safety</summary>"}
	last := -1
	for _, what := range order {
		i := strings.Index(page, what)
		if i <= last {
			t.Errorf("%q is at %d, after %d", what, i, last)
		}
		last = i
	}
	if !strings.Contains(page, `<p class="soft">Why: `) {
		t.Error("no reason is given")
	}
	for range 2 {
		ask(t, h, http.MethodPost, "/v1/plans/"+p.ID+"/sheet", filledIn("did", "on", "dish", "burgers"), asForm...)
	}
	kept := planIn(t, ask(t, h, http.MethodGet, "/v1/plans/"+p.ID, nil))
	if len(kept.Log) != 1 || kept.Revision != 1 {
		t.Errorf("pressed twice: %d entries, revision %d", len(kept.Log), kept.Revision)
	}
	if page := pageOf(t, h, p); strings.Contains(page, "Done: it is on") {
		t.Error("what is logged is still asked for")
	}
}

// What is wrong is said on the page, beside what was typed; a program gets a problem.
func TestFormsThatAreRefused(t *testing.T) {
	_, clock, h, p := burgersUnderWay(t)
	clock.set("2027-07-03T17:20:00-05:00")
	target := "/v1/plans/" + p.ID + "/sheet"
	for _, c := range []struct {
		pairs  []string
		status int
		says   string
	}{
		{[]string{"of", "core burgers", "degrees", "hot"}, 400, "hot"},
		{[]string{"of", "core burgers", "degrees", ""}, 400, "type what the thermometer says"},
		{[]string{"of", "core <b>x</b>", "degrees", "100"}, 400, "is no dish of this plan"},
		{[]string{"did", "dance", "dish", "burgers"}, 400, "dance"},
		{[]string{"clock", "9"}, 400, "time of day"},
		{[]string{"of", "grate", "degrees", "9999"}, 400, "9999 F"},
		{[]string{"take", "99"}, 404, "no such entry"},
		{[]string{"remedy", "1", "revision", "7"}, 412, "has changed since"},
		{[]string{"secret", "1"}, 400, "no field of the sheet"},
		{nil, 400, "say what was done"},
	} {
		a := ask(t, h, http.MethodPost, target, filledIn(c.pairs...), append([]string{"Accept", "text/html,*/*;q=0.8"}, asForm...)...)
		if a.StatusCode != c.status || !strings.Contains(string(a.body), `role="alert"`) || !strings.Contains(string(a.body), c.says) {
			t.Errorf("%v: %d, %q is missing", c.pairs, a.StatusCode, c.says)
		}
		if strings.Contains(string(a.body), "<b>x</b>") {
			t.Errorf("%v: markup is let through", c.pairs)
		}
		if a := ask(t, h, http.MethodPost, target, filledIn(c.pairs...), asForm...); a.Header.Get("Content-Type") != "application/problem+json" {
			t.Errorf("%v: a program gets %s", c.pairs, a.Header.Get("Content-Type"))
		}
	}
	if kept := planIn(t, ask(t, h, http.MethodGet, "/v1/plans/"+p.ID, nil)); kept.Revision != 0 {
		t.Errorf("revision %d", kept.Revision)
	}
}

// A page of somebody else that knows the address cannot log for the cook, whatever the
// browser tells of it.
func TestForgedForms(t *testing.T) {
	_, clock, h, p := burgersUnderWay(t)
	clock.set("2027-07-03T17:20:00-05:00")
	for _, c := range []struct {
		headers []string
		status  int
	}{
		{[]string{"Origin", "https://elsewhere.example"}, 403},
		{[]string{"Origin", "null"}, 403},
		{[]string{"Origin", "http://example.com:99"}, 403},
		{[]string{"Sec-Fetch-Site", "cross-site"}, 403},
		{[]string{"Sec-Fetch-Site", "same-site", "Origin", "http://www.example.com"}, 403},
		{[]string{"Sec-Fetch-Site", "same-origin"}, 303},
		{[]string{"Origin", "http://example.com"}, 303}, // httptest calls the service so
	} {
		a := ask(t, h, http.MethodPost, "/v1/plans/"+p.ID+"/sheet", filledIn("did", "lit"), append(c.headers, asForm...)...)
		if a.StatusCode != c.status {
			t.Errorf("%v: %d, want %d", c.headers, a.StatusCode, c.status)
		}
	}
}

// A feed shows the day and has nothing to press; nothing on it names the owner's address.
func TestTheFeedHasNoForms(t *testing.T) {
	cfg, _, h, p := burgersUnderWay(t)
	record, err := cfg.Store.Plan(t.Context(), p.ID)
	if err != nil {
		t.Fatal(err)
	}
	a := ask(t, h, http.MethodGet, "/v1/feeds/"+record.Feed+".html", nil)
	page := string(a.body)
	if !strings.Contains(page, "<h2>Do now</h2>") || strings.Contains(page, "<form") || strings.Contains(page, "<button") || strings.Contains(page, p.ID) {
		t.Error("the feed shows what it must not, or not what to do")
	}
	if a := ask(t, h, http.MethodPost, "/v1/feeds/"+record.Feed+"/sheet", filledIn("did", "lit"), asForm...); a.StatusCode != http.StatusNotFound {
		t.Errorf("posted to the feed: %d", a.StatusCode)
	}
}

// Names are strangers' texts, on the page, in its lists and in its buttons.
func TestNamesOnThePageAreEscaped(t *testing.T) {
	cfg, clock := testConfig()
	clock.set("2027-07-03T16:00:00-05:00")
	h := New(cfg).Handler()
	const name = `<img src=x onerror=alert(1)>\"' </script>`
	body := strings.Replace(burgers, `"Burgers"`, `"`+name+`"`, 1)
	body = strings.Replace(body, `"format": 1`, `"format": 1, "name": "</title><script>alert(2)</script>"`, 1)
	p := planned(t, h, []byte(body), asJSON...)
	clock.set("2027-07-03T17:44:00-05:00")
	ask(t, h, http.MethodPost, "/v1/plans/"+p.ID+"/sheet", filledIn("did", "on", "dish", p.Dishes[0].ID), asForm...)
	page := pageOf(t, h, p)
	if strings.Contains(page, "<img") || strings.Count(page, "<script") != 1 || strings.Count(page, "</script>") != 1 || strings.Count(page, "</title>") == 0 {
		t.Error("a name is markup on the page")
	}
	if !strings.Contains(page, "&lt;img src=x") {
		t.Error("the name is not on the page: the test looks at nothing")
	}
	for _, never := range []string{"http://", "https://", "//cdn", "@import"} {
		if i := strings.Index(strings.ReplaceAll(page, "http://www.w3.org/", ""), never); i >= 0 {
			t.Errorf("the page names %q: %.60s", never, page[i:])
		}
	}
}

// A page stays the same for a minute, and a day that cannot be had offers ways out that
// one press takes.
func TestPagesOfAMinuteAndWaysOut(t *testing.T) {
	_, clock, h, p := burgersUnderWay(t)
	first := ask(t, h, http.MethodGet, "/v1/plans/"+p.ID+".html", nil)
	clock.set("2027-07-03T16:00:40-05:00")
	if a := ask(t, h, http.MethodGet, "/v1/plans/"+p.ID+".html", nil, "If-None-Match", first.Header.Get("ETag")); a.StatusCode != http.StatusNotModified {
		t.Errorf("the same minute: %d", a.StatusCode)
	}
	clock.set("2027-07-03T16:01:00-05:00")
	if a := ask(t, h, http.MethodGet, "/v1/plans/"+p.ID+".html", nil, "If-None-Match", first.Header.Get("ETag")); a.StatusCode != http.StatusOK {
		t.Errorf("the next minute: %d", a.StatusCode)
	}
	late := strings.Replace(burgers, `"dishes"`, `"earliest": "17:50", "dishes"`, 1)
	none := planned(t, h, []byte(late), asJSON...)
	if none.Feasible || len(none.Remedies) == 0 {
		t.Fatal("the day can be had")
	}
	if page := pageOf(t, h, none); !strings.Contains(page, "This day won") || !strings.Contains(page, "Do it this way") {
		t.Error("the page of a day that cannot be had")
	}
	a := ask(t, h, http.MethodPost, "/v1/plans/"+none.ID+"/sheet", filledIn("remedy", "1", "revision", "0"), asForm...)
	if a.StatusCode != http.StatusSeeOther {
		t.Fatalf("%d %s", a.StatusCode, a.body)
	}
	if kept := planIn(t, ask(t, h, http.MethodGet, "/v1/plans/"+none.ID, nil)); !kept.Feasible || kept.Revision != 1 {
		t.Errorf("feasible %v, revision %d", kept.Feasible, kept.Revision)
	}
}
