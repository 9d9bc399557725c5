package main

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
)

// takesBack says of words that they take the last line back and tell nothing else.
func takesBack(words []string) bool {
	said := strings.ToLower(strings.Trim(strings.Join(words, " "), " .!"))
	return slices.Contains([]string{"undo", "undo that", "undo last", "undo the last", "undo the last one", "undo last line", "undo the last line", "scratch that", "scratch that last one", "take that back", "take it back"}, said)
}

// takeBack makes remarks of the lines of the last note of a log, and says what is last in it then.
func takeBack(cmd *cobra.Command, name string) error {
	in, err := readSource(name, cmd.InOrStdin())
	if err != nil {
		return err
	}
	lines := strings.SplitAfter(string(in.data), "\n")
	last := lastLine(lines, len(lines)-1)
	if last < 0 {
		return usage("%s: has no line to take back", name)
	}
	var told strings.Builder
	for i := noteFrom(lines, last); i <= last; i++ {
		if isEntry(lines[i]) {
			fmt.Fprintln(&told, "Taken back: "+spaced(lines[i]))
			lines[i] = takenBack + lines[i]
		}
	}
	if i := lastLine(lines, last); i >= 0 {
		fmt.Fprintln(&told, "Last in the log now: "+spaced(lines[i]))
	}
	if err := emit(cmd.OutOrStdout(), name, func(w io.Writer) error { _, err := io.WriteString(w, strings.Join(lines, "")); return err }); err != nil {
		return err
	}
	_, err = io.WriteString(cmd.OutOrStdout(), told.String())
	return err
}

// noteFrom is the first line of the note whose last line this is.
func noteFrom(lines []string, last int) int {
	for i := last - 1; i > 0; i-- {
		count, found := strings.CutPrefix(strings.TrimSpace(lines[i]), togetherMark)
		if n, err := strconv.Atoi(count); found && err == nil && last <= i+n {
			return i + 1
		}
		if found {
			break
		}
	}
	return last
}

// lastLine is the last entry of a log up to a line; -1 for none.
func lastLine(lines []string, upTo int) int {
	for i := upTo; i > 0; i-- {
		if isEntry(lines[i]) {
			return i
		}
	}
	return -1
}

// isEntry says of a line below the head that it counts.
func isEntry(line string) bool {
	line = strings.TrimSpace(line)
	return line != "" && !strings.HasPrefix(line, "#") && line+"\n" != logHead
}

// spaced is a line of a log as it is read out.
func spaced(line string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(strings.TrimSpace(line), ",", " ")), " ")
}
