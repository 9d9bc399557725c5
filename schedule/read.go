package schedule

import "strings"

// Read decodes and validates a request of YAML or JSON; a document that begins
// with { is JSON. What is left out of it is filled with the values that stand
// for it, such as an id for each dish. The error is an *InputError with every
// fault, its path and its line.
func Read(data []byte) (Request, error) {
	tree, faults := parseDocument(data, maxRequestBytes)
	if tree == nil {
		return Request{}, faults.err()
	}
	var r Request
	d := newDecoder(faults)
	d.request(&r)(tree, "")
	r = r.withDefaults()
	faults.adopt(r.validate(), d)
	if err := faults.err(); err != nil {
		return Request{}, err
	}
	return r, nil
}

// lineOf is the line of a path or of the nearest thing around it.
func (d *decoder) lineOf(path string) int {
	for {
		if line, ok := d.lines[path]; ok || path == "" {
			return line
		}
		path = path[:max(strings.LastIndexAny(path, ".["), 0)]
	}
}
