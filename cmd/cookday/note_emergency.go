package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
)

// emergency says what to do about danger to people before anything else is looked at, for no
// day, log or clock is needed for that; false where words tell of none. The words are kept in
// the log as a remark, where there is one or a day is beside it.
func emergency(cmd *cobra.Command, day, now, name string, words []string) (bool, error) {
	do := schedule.Emergency(words)
	if do == "" && filepath.Ext(name) == "" { // LOG was left out in the hurry
		do = schedule.Emergency(append([]string{name}, words...))
		words = nil
	}
	if do == "" {
		return false, nil
	}
	if _, err := fmt.Fprintln(cmd.OutOrStdout(), do+"."); err != nil || len(words) == 0 {
		return true, err
	}
	if now == "" {
		now = clockNow(cmd).Format("2006-01-02 15:04")
	}
	if !keepRemark(day, name, "# said "+now+": "+strings.Join(strings.Fields(strings.Join(words, " ")), " ")+"\n") {
		return true, nil
	}
	_, err := fmt.Fprintln(cmd.OutOrStdout(), "Kept in the log as a remark. Note what was read or done when everybody is well.")
	return true, err
}

// keepRemark adds a remark to a log in CSV; false where it cannot.
func keepRemark(day, name, remark string) bool {
	has, err := os.ReadFile(name)
	if err != nil {
		if _, beside := besides(name, dayEndings...); !os.IsNotExist(err) || day == "" && !beside {
			return false
		}
	}
	if text := strings.TrimSpace(string(has)); strings.HasPrefix(text, "[") || strings.HasPrefix(text, "{") {
		return false
	}
	return addLine(name, has, remark, markOf(name, day)) == nil
}
