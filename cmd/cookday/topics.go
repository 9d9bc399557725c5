package main

import (
	"embed"
	"strings"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
)

//go:embed help/*.txt
var topicTexts embed.FS

// topics are what help tells besides the commands. They do nothing.
func topics() []*cobra.Command {
	return []*cobra.Command{
		topic("request", "Every field of a request", requestHelp),
		topic("log", "Every kind of line of a log", func() string { return topicText("log") + logHelp() }),
		topic("grill", "How to say a grill, and what fits on it", func() string { return topicText("grill") }),
		topic("safety", "What is held to which rule", func() string { return topicText("safety") }),
		topic("csv", "Every column of the CSV tables", func() string { return topicText("csv") }),
		topic("push", "What goes out to a broker or a webhook", func() string { return topicText("push") }),
	}
}

// topic is a text that is made when it is asked for.
func topic(name, short string, long func() string) *cobra.Command {
	c := &cobra.Command{Use: name, Short: short}
	c.SetHelpFunc(func(c *cobra.Command, args []string) {
		c.Long = strings.TrimRight(long(), "\n")
		c.Parent().HelpFunc()(c, args)
	})
	return c
}

func topicText(name string) string {
	text, err := topicTexts.ReadFile("help/" + name + ".txt")
	if err != nil {
		panic(err) // the text is a part of this program
	}
	return string(text)
}

// table writes rows of two columns: a short one, and a text that is wrapped beside it.
func table(rows [][2]string, width int) string {
	p := page{columns: usualColumns - 1}
	for _, row := range rows {
		label := row[0]
		if len(label) >= width {
			p.line(label)
			label = ""
		}
		p.item(label+strings.Repeat(" ", width-len(label)), row[1])
	}
	return p.String()
}

// requestHelp tells of every field, grouped as a request is.
func requestHelp() string {
	var b strings.Builder
	b.WriteString("A request says what is cooked, on what, and when people eat. It is YAML or\n" +
		"JSON; cookday new writes one. Quantities are text with a unit: 10 lb or 4.5 kg,\n250 F or 120 C, 1h30m. This is enough:\n\n" +
		"  serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\n  grill: kettle 22 in\n  guests: 8\n  dishes:\n    - cut: brisket\n\nThe fields:\n\n")
	var rows [][2]string
	for _, f := range schedule.RequestFields() {
		name := strings.NewReplacer("dishes[].", "  ", "[]", "").Replace(f.Path)
		rows = append(rows, [2]string{"  " + name, f.Text}, [2]string{"", f.Example})
	}
	return b.String() + table(rows, 26)
}

func logHelp() string {
	var rows [][2]string
	for _, f := range schedule.EntryForms() {
		carries := string(f.Carries)
		if f.Carries == schedule.CarriesNothing {
			carries = ""
		} else {
			carries = " Value: " + carries + "."
		}
		rows = append(rows, [2]string{"  " + string(f.Kind), f.Kind.Means() + carries})
	}
	return table(rows, 18)
}
