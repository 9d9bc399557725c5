package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

func noteCommand() *cobra.Command {
	var day, now string
	cmd := &cobra.Command{
		Use:   "note LOG WORDS...",
		Short: "Add a line to the log of a day: what was read or done just now",
		Long: `note adds a line with the time of now to the log of a day, a CSV file, which it
makes where there is none. The day is the request or plan of the same name beside
it (saturday.yaml beside saturday.csv), or the one that --day names; the log
remembers that one.

Words are a dish and what was read or done, or something of the fire, as you would
say it:

  brisket 152          inside; a number without F or C is in the day's units
  turkey thigh 158     at one place: the coldest one counts
  turkey coldest 158   the coldest place of a probe pushed all through
  thighs 158 to 172    of several pieces: the lowest counts
  put brisket on, both butts on, wrapped in foil, off, off at 203
  in the cooler, on the counter, aside, in the fridge
  to oven 275 (cooking), to oven (done, to wait)
  surface 150          just under the surface, while it waits
  grate 260, lid 300, oven 180
  lit, relit, fire out, cleared ash, lid opened, lid closed
  top vent 1/4, vents top full bottom half, both vents shut
  added 30 lit coals, added 25 unlit coals, added a chimney of coals
  took out 20 coals, took out half the coals
  wind 12 mph, wind calm, raining, rain stopped, bag empty
  dinner 7, dinner an hour later, guests 30 min late, served
  brisket called off
  lit at 11:58, ribs off 20 min ago, fire out since 3:10     earlier than now
  chicken 165, ribs 190, grate 340                           a line each
  undo                 takes the last note back

A time without AM or PM is the last such time that is past; of dinner the next one.
A note that is not understood is refused, and nothing is stored. What tells of danger
to people is answered first of all, and kept in the log as a remark.

A dish goes by its id, its name, its cut, or any beginning that no other has.
cookday help log tells of every kind of line.`,
		Example: `  cookday note saturday.csv brisket 152
  cookday note saturday.csv wrapped
  cookday note saturday.csv --day party.yaml grate 260`,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) < 2 && schedule.Emergency(args) == "" {
				return usage("%s: %s is missing; see %s --help", cmd.CommandPath(), []string{"LOG", "WORDS"}[len(args)], cmd.CommandPath())
			}
			return nil
		},
		ValidArgsFunction: completeNote,
		RunE:              func(cmd *cobra.Command, args []string) error { return note(cmd, day, now, args[0], args[1:]) },
	}
	cmd.Flags().StringVar(&day, "day", "", "`file` of the request or plan, if it is not beside the log")
	cmd.Flags().StringVar(&now, "now", "", "`time` of now: 14:30, 2027-07-03T14:30 or RFC 3339 (if not given: this machine's clock)")
	return cmd
}

// note adds a line to a log.
func note(cmd *cobra.Command, day, now, name string, words []string) error {
	if takesBack(words) {
		return takeBack(cmd, name)
	}
	if did, err := emergency(cmd, day, now, name, words); did {
		return err
	}
	file, err := dayOf(day, name)
	if err != nil {
		return err
	}
	p, err := readDay(cmd, file, name)
	if err != nil {
		return err
	}
	log, in, err := readLogFile(cmd, name, p)
	if err != nil {
		return err
	}
	at, err := nowOf(cmd, now, p, log)
	if err != nil {
		return err
	}
	notes, err := schedule.ReadNote(words, p, log, at)
	if err != nil {
		return inFile(filepath.Base(name), err)
	}
	var lines, told strings.Builder
	for _, n := range notes {
		if n.At.After(at) {
			return usage("%s: %s is still ahead, it is only %s; note what has happened", name, said(p.Request.Units, n.At, at), p.Request.Units.Clock(at))
		}
		line, err := lineOf(name, in.data, map[string]string{"time": n.At.Format("2006-01-02 15:04"), "dish": n.Dish, "kind": n.Kind, "value": n.Text})
		if err != nil {
			return err
		}
		lines.WriteString(line)
		fmt.Fprintln(&told, "Noted: "+said(p.Request.Units, n.At, at)+" "+inWords(n, p))
		if n.Aside != "" {
			fmt.Fprintln(&told, strings.ToUpper(n.Aside[:1])+n.Aside[1:]+".")
		}
	}
	text := lines.String()
	if len(notes) > 1 {
		text = fmt.Sprintf("%s%d\n", togetherMark, len(notes)) + text
	}
	if err := addLine(name, in.data, text, markOf(name, day)); err != nil {
		return err
	}
	_, err = io.WriteString(cmd.OutOrStdout(), told.String())
	return err
}

// said is a time, with its day where it is not today.
func said(u unit.System, t, now time.Time) string {
	if t.Format(time.DateOnly) != now.Format(time.DateOnly) {
		return u.ClockOn(t)
	}
	return u.Clock(t)
}

// lineOf is a line for a log, its columns in the order of the log's own.
func lineOf(name string, has []byte, columns map[string]string) (string, error) {
	text := strings.TrimSpace(string(has))
	if strings.HasPrefix(text, "[") || strings.HasPrefix(text, "{") {
		return "", usage("%s: is a log in JSON; note adds to one in CSV, which begins with the line %s", name, strings.TrimSpace(logHead))
	}
	head := strings.TrimSpace(logHead)
	for line := range strings.Lines(text) {
		if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "#") {
			head = line
			break
		}
	}
	var all []string
	for column := range strings.SplitSeq(head, ",") {
		all = append(all, columns[strings.ToLower(strings.TrimSpace(column))])
	}
	var s strings.Builder
	w := csv.NewWriter(&s)
	err := w.Write(all)
	w.Flush()
	return s.String(), err
}

const (
	logHead      = "time,dish,kind,value\n"
	dayMark      = "# day: "             // before the file that a log is of
	takenBack    = "# taken back: "      // before a line that does not count
	togetherMark = "# one note, lines: " // before the lines of a note of several
)

// addLine appends to a log, which is made where there is none.
func addLine(name string, has []byte, line, day string) error {
	text := line
	switch {
	case len(strings.TrimSpace(string(has))) == 0:
		text = logHead + day + line
	case !strings.Contains(string(has), dayMark):
		text = day + line
	}
	if len(has) > 0 && has[len(has)-1] != '\n' {
		text = "\n" + text
	}
	f, err := os.OpenFile(name, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		return fileTrouble(name, err)
	}
	_, err = f.WriteString(text)
	if closed := f.Close(); err == nil {
		err = closed
	}
	return err
}

// dayOf is the file of the request or plan that a log is of.
func dayOf(flag, log string) (string, error) {
	if flag != "" {
		return flag, nil
	}
	if data, err := os.ReadFile(log); err == nil {
		for line := range strings.Lines(string(data)) {
			if day, ok := strings.CutPrefix(strings.TrimSpace(line), dayMark); ok {
				if !filepath.IsAbs(day) {
					day = filepath.Join(filepath.Dir(log), day)
				}
				return day, nil
			}
		}
	}
	if day, ok := besides(log, dayEndings...); ok {
		return day, nil
	}
	return "", usage("%s: of which day? There is no request of that name beside it: cookday note %s --day party.yaml ...", log, log)
}

// markOf is the remark by which a log remembers the day that a flag named.
func markOf(log, day string) string {
	if day == "" {
		return ""
	}
	file, err := filepath.Abs(day)
	if err != nil {
		file = day
	}
	if folder, err := filepath.Abs(filepath.Dir(log)); err == nil {
		if rel, err := filepath.Rel(folder, file); err == nil && filepath.IsLocal(rel) {
			file = rel
		}
	}
	return dayMark + file + "\n"
}
