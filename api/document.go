package api

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"net/http"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"
)

// getDocument serves openapi.yaml as it is built in.
func (s *Service) getDocument(c *call) error {
	if _, err := c.parameters(); err != nil {
		return err
	}
	if len(s.cfg.Document) == 0 {
		return problem("not-found", "This service carries no description of itself.")
	}
	return c.send(http.StatusOK, newContent(typeYAML, 0, s.cfg.Document))
}

// getManual is the same to read.
func (s *Service) getManual(c *call) error {
	if _, err := c.parameters(); err != nil {
		return err
	}
	if len(s.cfg.Document) == 0 {
		return problem("not-found", "This service carries no description of itself.")
	}
	k, err := s.manual()
	if err != nil {
		return err
	}
	return c.sendPage(http.StatusOK, k)
}

//go:embed manual.html
var manualText string

var manualTemplate = template.Must(template.New("manual").Parse(manualText))

// description is what the page shows of openapi.yaml.
type description struct {
	Info struct {
		Title, Version, Summary, Description string
	}
	Paths yaml.Node
	Parts struct {
		Parameters map[string]described
		Responses  map[string]described
		Schemas    map[string]schema
	} `yaml:"components"`
}

type described struct {
	Ref         string `yaml:"$ref"`
	Name, In    string
	Required    bool
	Description string
	Schema      yaml.Node
}

type schema struct {
	Description string
	Required    []string
	Properties  yaml.Node
}

type operation struct {
	Method, Path, ID     string
	Summary, Description string
	Parameters           []described
	Body                 []string
	Answers              []described // the name is the status
}

type field struct {
	Name, Type, Description string
	Needed                  bool
}

type group struct {
	Name, Description string
	Fields            []field
}

// manualOf draws the page.
func manualOf(document []byte) (*content, error) {
	var d description
	if err := yaml.Unmarshal(document, &d); err != nil {
		return nil, fmt.Errorf("openapi.yaml: %w", err)
	}
	operations, err := d.operations()
	if err != nil {
		return nil, err
	}
	groups, err := d.groups()
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = manualTemplate.Execute(&b, map[string]any{
		"Info": d.Info, "Paragraphs": strings.Split(strings.TrimSpace(d.Info.Description), "\n\n"), "Operations": operations, "Groups": groups})
	return newContent("text/html; charset=utf-8", 0, b.Bytes()), err
}

func (d *description) operations() (list []operation, err error) {
	for i := 0; i+1 < len(d.Paths.Content); i += 2 {
		path, item := d.Paths.Content[i].Value, d.Paths.Content[i+1]
		var shared struct{ Parameters []described }
		if err := item.Decode(&shared); err != nil {
			return nil, err
		}
		for k := 0; k+1 < len(item.Content); k += 2 {
			if method := item.Content[k].Value; method != "parameters" {
				o, err := d.operation(strings.ToUpper(method), path, item.Content[k+1])
				if err != nil {
					return nil, err
				}
				o.Parameters = append(d.resolved(shared.Parameters), o.Parameters...)
				list = append(list, o)
			}
		}
	}
	return list, nil
}

func (d *description) operation(method, path string, n *yaml.Node) (operation, error) {
	var said struct {
		ID                   string `yaml:"operationId"`
		Summary, Description string
		Parameters           []described
		Body                 struct{ Content map[string]yaml.Node } `yaml:"requestBody"`
		Responses            map[string]described
	}
	if err := n.Decode(&said); err != nil {
		return operation{}, err
	}
	o := operation{Method: method, Path: path, ID: said.ID, Summary: said.Summary, Description: said.Description, Parameters: d.resolved(said.Parameters)}
	for kind, node := range said.Body.Content {
		o.Body = append(o.Body, kind+": "+typeOf(find(&node, "schema")))
	}
	slices.Sort(o.Body)
	for status, r := range said.Responses {
		if _, name, ok := strings.Cut(r.Ref, "#/components/responses/"); ok {
			r = d.Parts.Responses[name]
		}
		r.Name = status
		o.Answers = append(o.Answers, r)
	}
	slices.SortFunc(o.Answers, func(a, b described) int { return strings.Compare(a.Name, b.Name) })
	return o, nil
}

func (d *description) resolved(list []described) []described {
	out := make([]described, len(list))
	for i, p := range list {
		if _, name, ok := strings.Cut(p.Ref, "#/components/parameters/"); ok {
			p = d.Parts.Parameters[name]
		}
		out[i] = p
	}
	return out
}
