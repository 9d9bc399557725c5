package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// usualWant is the level of a fire whose log is learned from without one; nothing learned depends on it.
const usualWant = "250 F"

func learnCommand() *cobra.Command {
	var format, out string
	cmd := &cobra.Command{
		Use:   "learn RECORD [DAY] LOG",
		Short: "Learn your own grill from a finished cook",
		Long: `learn takes a finished cook, its request or plan and its log, and prints the record of
your grill: how much air it lets in, how its gauge stands to the grate, and so on.
RECORD is the record that you have, or a file that is not there yet. Without DAY the
log is of a fire alone, as for cookday fire, and flags say what burned.

A fire teaches that was read at the grate six times or more and had its vents moved
twice, both logged. A piece that cooks low teaches the pace, if its on and off are
logged. Put the record into your requests:

  grill: {kind: kettle, diameter: 22 in, own: {cooks: 3, figures: [...]}}

or hand it to cookday fire with --own. The plan, its vents, its times and the live advice
then are those of your grill. One odd cook moves a record little.`,
		Example: `  cookday learn grill.yaml saturday.json saturday.csv --out grill.yaml
  cookday learn grill.yaml fire.csv --lit 12 --unlit 80 --out grill.yaml`,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) == 2 {
				return nil
			}
			return operands("RECORD", "DAY", "LOG")(cmd, args)
		},
		RunE: func(cmd *cobra.Command, args []string) error { return learn(cmd, args, format, out) },
	}
	f := cmd.Flags()
	for _, name := range learnFields() {
		if boolField(name) {
			f.Bool(name, false, fireHelp[name])
			continue
		}
		f.String(name, "", fireHelp[name])
	}
	f.StringVarP(&format, "format", "f", formatYAML, "`format`: yaml or json")
	f.StringVarP(&out, "out", "o", "", "`file` to write, instead of standard output")
	complete(cmd, "format", formatYAML, formatJSON)
	return cmd
}

const formatYAML = "yaml"

// learnFields are those of an inquiry about a fire that say what burned.
func learnFields() []string {
	return []string{"air", "bottom", "diameter", "fuel", "grill", "layout", "lit", "top", "units", "unlit", "water-pan", "wind"}
}

// learn prints the record of a grill after one more cook.
func learn(cmd *cobra.Command, args []string, format, out string) error {
	if err := oneOf("--format", format, formatYAML, formatJSON); err != nil {
		return err
	}
	var own *schedule.OwnGrill
	if _, err := os.Stat(args[0]); err == nil || !errors.Is(err, fs.ErrNotExist) {
		if own, err = readOwn(cmd, args[0]); err != nil {
			return err
		}
	}
	var err error
	var lesson schedule.GrillLesson
	if len(args) == 2 {
		lesson, err = lessonOfFire(cmd, own, args[1])
	} else {
		lesson, err = lessonOfDay(cmd, own, args[1], args[2])
	}
	if err != nil {
		return err
	}
	if lesson.Own == nil && format == formatYAML { // no record is written
		_, err = fmt.Fprintln(cmd.ErrOrStderr(), lesson.Text)
		return err
	}
	return emit(cmd.OutOrStdout(), out, func(w io.Writer) error {
		if format == formatJSON {
			return writeJSON(w, lesson)
		}
		t := page{columns: usualColumns}
		for _, text := range append([]string{lesson.Text}, lesson.Holds...) {
			t.item("# ", text)
		}
		_, err := io.WriteString(w, commented(t.String())+lesson.Own.Text())
		return err
	})
}

// commented marks every line as a comment of YAML.
func commented(text string) string {
	lines := strings.Split(strings.TrimRight(text, "\n"), "\n")
	for i, line := range lines {
		lines[i] = "# " + strings.TrimPrefix(strings.TrimSpace(line), "# ")
	}
	return strings.Join(lines, "\n") + "\n"
}

// readOwn reads a record, or that of a request's grill.
func readOwn(cmd *cobra.Command, name string) (*schedule.OwnGrill, error) {
	in, err := readSource(name, cmd.InOrStdin())
	if err != nil {
		return nil, err
	}
	own, err := schedule.ReadOwnGrill(in.data)
	if err == nil {
		return &own, nil
	}
	if r, bad := schedule.Read(in.data); bad == nil && r.Grill.Own != nil {
		return r.Grill.Own, nil
	} else if bad == nil {
		return nil, inFile(in.name, fmt.Errorf("the grill of this request has no record: cookday learn writes one, to stand there as own"))
	}
	return nil, inFile(in.name, err)
}

func lessonOfDay(cmd *cobra.Command, own *schedule.OwnGrill, day, name string) (schedule.GrillLesson, error) {
	p, err := readDay(cmd, day, name)
	if err != nil {
		return schedule.GrillLesson{}, err
	}
	in, err := readSource(name, cmd.InOrStdin())
	if err != nil {
		return schedule.GrillLesson{}, err
	}
	log, err := schedule.ReadLog(in.data, p)
	if err != nil {
		return schedule.GrillLesson{}, inFile(in.name, err)
	}
	if own != nil {
		p.Request.Grill.Own = own
		if p.Asked != nil {
			p.Asked.Grill.Own = own
		}
	}
	lesson, err := planner.Learn(cmd.Context(), p, log)
	return lesson, inFile(in.name, err)
}

func lessonOfFire(cmd *cobra.Command, own *schedule.OwnGrill, name string) (schedule.GrillLesson, error) {
	in, err := readSource(name, cmd.InOrStdin())
	if err != nil {
		return schedule.GrillLesson{}, err
	}
	log, err := schedule.ReadFireLog(in.data)
	if err != nil {
		return schedule.GrillLesson{}, inFile(in.name, err)
	}
	fields := changedFlags(cmd.Flags(), learnFields())
	fields["want"] = usualWant
	q, err := schedule.ReadFireInquiry(fields, log)
	if err != nil {
		return schedule.GrillLesson{}, err
	}
	q.Own = own
	return planner.LearnFire(cmd.Context(), q)
}
