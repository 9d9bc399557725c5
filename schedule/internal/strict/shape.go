package strict

import "slices"

// Shape is what a reader takes, of whatever kind: it says of a node what a schema says.
type Shape struct {
	Name string // of a shape that is kept under it in [Shapes]; then all else is empty

	Text, Number, Whole, Boolean bool
	Words                        []string // if the text is one of a few words, or may be one of them
	OtherWords                   bool     // other texts are taken too
	Instant                      bool     // the text is an RFC 3339 instant

	Object    bool
	Members   []MemberShape // in order
	AnyFields bool          // whatever their names

	List        bool
	Items       *Shape
	Least, Most int // items; Most 0 for any number
}

// MemberShape is one field of an object.
type MemberShape struct {
	Name     string
	Required bool
	Nullable bool
	Shape    Shape
}

// Shapes finds out what readers take by handing them a node of every kind, which notes
// what is asked of it. So a schema cannot say anything else than the reader does.
type Shapes struct{ Named map[string]*Shape }

// Of is the shape of what a reader takes.
func (s *Shapes) Of(read Reader) Shape {
	probe := &prober{shapes: s}
	for _, n := range []*Node{
		{Kind: NodeObject}, {Kind: NodeList, Items: []*Node{{}}}, {Kind: NodeNumber, Text: "1"}, {Kind: nodeBoolean, Text: "true"},
		{Kind: NodeText, Text: "a"}, {Kind: NodeText, Text: "20"}, // readers may tell numbers from words
	} {
		n.probe = probe
		read(n, "")
	}
	return probe.shape
}

// prober gathers what is asked of the nodes that carry it.
type prober struct {
	shapes *Shapes
	shape  Shape
	more   []string // words beside those that are said later
}

// Probed says whether a node only asks what is taken; then readers stop where they have
// looked at its kind.
func (n *Node) Probed() bool { return n.probe != nil }

// Named keeps the shape of a reader under a name, so that it may contain itself.
func Named(name string, read Reader) Reader {
	return func(n *Node, path string) {
		if n.probe == nil {
			read(n, path)
			return
		}
		known := n.probe.shapes.Named
		if known[name] == nil {
			known[name] = &Shape{}
			*known[name] = n.probe.shapes.Of(read)
		}
		n.probe.shape = Shape{Name: name}
	}
}

// asked notes that a node of the kind is taken.
func (p *prober) asked(kind nodeKind) {
	switch kind {
	case NodeText:
		p.shape.Text = true
	case NodeNumber:
		p.shape.Number = true
	case nodeBoolean:
		p.shape.Boolean = true
	case NodeObject:
		p.shape.Object = true
	case NodeList:
		p.shape.List = true
	}
}

func (p *prober) members(all []Member) {
	for _, m := range all {
		if !slices.ContainsFunc(p.shape.Members, func(known MemberShape) bool { return known.Name == m.Name }) {
			p.shape.Members = append(p.shape.Members, MemberShape{Name: m.Name, Required: m.Required, Nullable: m.Nullable, Shape: p.shapes.Of(m.Read)})
		}
	}
}

// ProbedItems notes what each item of a list is.
func (n *Node) ProbedItems(read Reader) { n.probe.items(read, 0) }

func (p *prober) items(read Reader, most int) {
	if p.shape.Items == nil {
		of := p.shapes.Of(read)
		p.shape.Items, p.shape.Most = &of, most
	}
}

// AtLeastOne notes that an empty list is refused.
func (n *Node) AtLeastOne() {
	if n.probe != nil && n.Kind == NodeList {
		n.probe.shape.Least = 1
	}
}

// AnInstant notes that a text is an instant.
func (n *Node) AnInstant() {
	if n.probe != nil {
		n.probe.shape.Instant = true
	}
}

// Among notes the words that a text is one of; open says that other texts are taken too.
func Among(read Reader, open bool, words func() []string) Reader {
	return func(n *Node, path string) {
		if n.probe != nil && n.Kind == NodeText && n.probe.shape.Words == nil {
			n.probe.shape.Words, n.probe.shape.OtherWords = append(words(), n.probe.more...), open
		}
		read(n, path)
	}
}
