package main

import (
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// guessOf is the nearest request to a refused one that is read and planned; false where there is
// none.
func guessOf(cmd *cobra.Command, in source) (guess []byte, ok bool) {
	guess, ok = schedule.GuessOn(in.data, homeNow(cmd))
	if !ok {
		return nil, false
	}
	r, err := schedule.Understand(guess, homeNow(cmd))
	if err != nil {
		return nil, false
	}
	if _, err = planner.Make(cmd.Context(), r, planner.Judged()); err != nil {
		return nil, false
	}
	return guess, true
}

// offerGuess ends a refusal with the one command that writes the nearest request, where one was
// found that is planned.
func offerGuess(cmd *cobra.Command, in source) {
	if !in.isFile() {
		return
	}
	if _, ok := guessOf(cmd, in); ok {
		to := "guess.yaml"
		if filepath.Base(in.name) == to { // a shell empties the file that it writes to
			to = "guess-2.yaml"
		}
		fmt.Fprintf(cmd.ErrOrStderr(), "Or let what is open be guessed, look it over, and plan that:\ncookday check --guess %s > %s\n", shellWord(in.name), to)
	}
}

// shellWord is the name of a file as a shell takes it.
func shellWord(name string) string {
	if strings.ContainsAny(name, " \t'\"\\$&|;()<>*?!#`~") {
		return "'" + strings.ReplaceAll(name, "'", `'\''`) + "'"
	}
	return name
}

// writeGuess prints the nearest request that is planned, and how many lines of it are guessed.
func writeGuess(cmd *cobra.Command, in source) error {
	_, refused := schedule.Understand(in.data, homeNow(cmd))
	if refused == nil {
		_, err := cmd.OutOrStdout().Write(in.data)
		fmt.Fprintf(cmd.ErrOrStderr(), "%s: nothing to guess; cookday plan takes it as it is\n", in.name)
		return err
	}
	guess, ok := guessOf(cmd, in)
	if !ok {
		code := report(cmd.ErrOrStderr(), inFile(in.name, refused))
		fmt.Fprintf(cmd.ErrOrStderr(), "%s: no guess was found that can be planned; mend what is told above\n", in.name)
		return &toldError{code}
	}
	if _, err := cmd.OutOrStdout().Write(guess); err != nil {
		return err
	}
	lines, unused := strings.Count(string(guess), "# guessed: "), strings.Count(string(guess), "# not used: ")
	fmt.Fprintf(cmd.ErrOrStderr(), "%d guessed, %d not used: look at the lines with a #, and set right what you meant otherwise. Then cookday plan takes it.\n", lines, unused)
	return nil
}
