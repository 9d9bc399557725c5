package api

import (
	"bytes"
	"flag"
	"net/http"
	"os"
	"strings"
	"testing"

	"go.yaml.in/yaml/v3"
)

var renew = flag.Bool("renew", false, "write the examples of openapi.yaml anew")

const examplesMark = "  # Real outputs, renewed by: go test ./api -run TestExamples -renew\n"

// TestExamplesAreRealOutputs makes the examples of the document with a service
// whose clock and ids stand still, and compares.
func TestExamplesAreRealOutputs(t *testing.T) {
	text, err := os.ReadFile("../openapi.yaml")
	if err != nil {
		t.Fatal(err)
	}
	head, have, found := strings.Cut(string(text), examplesMark)
	if !found {
		t.Fatal("openapi.yaml has no line that says where its examples begin")
	}
	want := realExamples(t)
	if *renew {
		if err := os.WriteFile("../openapi.yaml", []byte(head+examplesMark+want), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if have != want {
		t.Errorf("the examples of openapi.yaml are out of date: run go test ./api -run TestExamples -renew\nfirst difference: %s", firstDifference(have, want))
	}
}

func firstDifference(have, want string) string {
	a, b := strings.Split(have, "\n"), strings.Split(want, "\n")
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			return "have " + a[i] + ", want " + b[i]
		}
	}
	return "one is longer"
}

func realExamples(t *testing.T) string {
	cfg, clock := testConfig()
	h := New(cfg).Handler()
	quiet := []string{"X-Request-Id", "example"} // the id of a request is in a problem
	get := func(target string, more ...string) string {
		return string(ask(t, h, http.MethodGet, target, nil, append(more, quiet...)...).body)
	}
	const brisket = "/v1/forecasts?cut=brisket&weight=12+lb&grate=250+F&wrap=foil@150F&probability=0.5,0.95"
	var examples yaml.Node
	examples.Kind = yaml.MappingNode
	add := func(name, summary, value string, isJSON bool) {
		v := yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: value}
		if isJSON {
			var parsed yaml.Node
			if err := yaml.Unmarshal([]byte(value), &parsed); err != nil {
				t.Fatal(err)
			}
			v = *parsed.Content[0]
			blockStyle(&v)
		}
		scalar := func(s string) *yaml.Node { return &yaml.Node{Kind: yaml.ScalarNode, Value: s} }
		examples.Content = append(examples.Content, scalar(name),
			&yaml.Node{Kind: yaml.MappingNode, Content: []*yaml.Node{scalar("summary"), scalar(summary), scalar("value"), &v}})
	}
	add("BrisketForecast", "A brisket at 250 F", get(brisket), true)
	add("BrisketForecastCSV", "The same for a spreadsheet", get(brisket+"&format=csv"), false)
	add("BurgersRequest", "Four burgers", burgers, true)
	p := ask(t, h, http.MethodPost, "/v1/plans", []byte(burgers), asJSON...)
	add("Burgers", "The plan of four burgers", string(p.body), true)
	clock.set("2027-07-03T17:30:00-05:00")
	add("BurgersDue", "Half an hour before they are served", get("/v1/plans/"+testID+"/due"), true)
	add("BurgersStream", "The same, as a stream that was taken up again", streamed(t, h, clock), false)
	add("BadInput", "Two faults", string(ask(t, h, http.MethodPost, "/v1/plans",
		[]byte(strings.NewReplacer(`"6 oz"`, `"6"`, `"burger"`, `"burgre"`).Replace(burgers)), append(asJSON, quiet...)...).body), true)
	add("NotFound", "A plan that was deleted", get("/v1/plans/"+strings.ReplaceAll(testID, "0000-4", "0001-4")), true)
	add("Stale", "A change made up for another revision", string(ask(t, h, http.MethodDelete, "/v1/plans/"+testID, nil, append(quiet, "If-Match", `"3-0"`)...).body), true)
	var b bytes.Buffer
	e := yaml.NewEncoder(&b)
	e.SetIndent(2)
	if err := e.Encode(map[string]*yaml.Node{"examples": &examples}); err != nil {
		t.Fatal(err)
	}
	indented := "  " + strings.TrimSuffix(strings.ReplaceAll(b.String(), "\n", "\n  "), "  ")
	return strings.ReplaceAll(indented, "\n  \n", "\n\n")
}

func blockStyle(n *yaml.Node) {
	n.Style = 0
	if len(n.Content) == 0 && n.Kind != yaml.ScalarNode {
		n.Style = yaml.FlowStyle // [] and {}
	}
	for _, inner := range n.Content {
		blockStyle(inner)
	}
}
