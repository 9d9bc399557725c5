package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
	"example.com/cookday/schedule/unit"
)

// readDay reads a plan, or makes one of a request: a day may be followed by either.
// A day that is named by the week alone is the next one; with its log, the one that is nearest to
// the first date of the log, or to now.
func readDay(cmd *cobra.Command, name, log string) (schedule.Plan, error) {
	in, err := readSource(name, cmd.InOrStdin())
	if err != nil {
		return schedule.Plan{}, err
	}
	if in.isPlan() {
		p, err := schedule.ReadPlan(in.data)
		return p, inFile(in.name, err)
	}
	r, err := readRequest(cmd, in, func(data []byte, now time.Time) (schedule.Request, error) {
		return schedule.UnderstandWithLog(data, now, logText(log))
	})
	if err != nil {
		return schedule.Plan{}, err
	}
	p, err := planner.Make(cmd.Context(), r)
	return p, inFile(in.name, err)
}

// logText is what stands in a log; empty where none is there yet, or where it can be read once only.
func logText(name string) []byte {
	if name == "" || name == "-" {
		return nil
	}
	data, err := os.ReadFile(name)
	if err != nil {
		return nil
	}
	return data
}

// readLogFile reads the log of a day; one that is not there yet is empty, and a line of it that cannot be read is left to
// be told by what follows the day.
func readLogFile(cmd *cobra.Command, name string, p schedule.Plan) ([]schedule.Entry, source, error) {
	in, err := readSource(name, cmd.InOrStdin())
	if _, missing := os.Stat(name); name != "-" && errors.Is(missing, fs.ErrNotExist) {
		return nil, source{name: name}, nil
	}
	if err != nil {
		return nil, in, err
	}
	if len(strings.TrimSpace(string(in.data))) == 0 {
		return nil, in, nil
	}
	log, _, err := schedule.FollowLog(in.data, p)
	return log, in, inFile(in.name, err)
}

// followFile reads the log by which a day is followed, and says what errors call it.
func followFile(cmd *cobra.Command, name string, p schedule.Plan) (log []schedule.Entry, aside []schedule.LeftAside, called string, err error) {
	in, err := readSource(name, cmd.InOrStdin())
	if err != nil {
		return nil, nil, "", err
	}
	log, aside, err = schedule.FollowLog(in.data, p)
	return log, aside, in.name, inFile(in.name, err)
}

// notAhead refuses a log with a line after now, by the first of them.
func notAhead(name string, log []schedule.Entry, typed string, now time.Time, u unit.System) error {
	for _, e := range log {
		if !e.At.After(now) {
			continue
		}
		at := said(u, e.At.In(now.Location()), now)
		if typed != "" {
			return usage("%s line %d: %s is later than --now, %s. Leave --now out, or take that line out", name, e.Line, at, u.Clock(now))
		}
		return usage("%s line %d: %s is still ahead, it is only %s. Put its time right, or take that line out", name, e.Line, at, u.Clock(now))
	}
	return nil
}

// dayEndings are those of the files that a day may be in, beside its log.
var dayEndings = []string{".yaml", ".yml", ".json"}

// besides is the file of a day beside a log of the same name, or of a log beside a day.
func besides(name string, endings ...string) (string, bool) {
	stem := strings.TrimSuffix(name, filepath.Ext(name))
	for _, ending := range endings {
		if _, err := os.Stat(stem + ending); err == nil && stem+ending != name {
			return stem + ending, true
		}
	}
	return "", false
}
