package main

import (
	"cmp"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

func rootCommand() *cobra.Command {
	root := &cobra.Command{
		Use:   "cookday",
		Short: "Plan a cook day on one grill",
		Long: `cookday works backward from the time people eat to when to light, load, wrap,
take off, rest and slice, for several dishes on one grate, and says how sure it
is and how much charcoal it takes. Its times are predictions: the thermometer
decides.

Exit codes: 0 fine, 1 the day cannot be done as asked (the plan that says why is
printed), 2 bad input, 3 a fault of this program or of the machine.`,
		Args:    noSuchCommand,
		Version: cmp.Or(version(), "of an unknown build"),

		SilenceErrors: true, // report prints them, one a line
		SilenceUsage:  true,

		SuggestionsMinimumDistance: 2, // letters
		RunE:                       func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	root.SetUsageTemplate(strings.ReplaceAll(root.UsageTemplate(), ".FlagUsages", fmt.Sprintf(".FlagUsagesWrapped %d", usualColumns)))
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error {
		return usage("%s: %s; see %s --help", cmd.CommandPath(), flagTrouble(err), cmd.CommandPath())
	})
	root.AddCommand(newCommand(), planCommand(), reviseCommand(), noteCommand(), nowCommand(), forecastCommand(), fireCommand(), amountsCommand(), cutsCommand(), layoutsCommand(), checkCommand(), listenCommand(), storeCommand(), schemaCommand())
	return root
}

// strictCompletion adds the command for shell completion, which keeps where root
// prints to, and has it refuse a shell that it does not know.
func strictCompletion(root *cobra.Command) {
	root.InitDefaultCompletionCmd()
	for _, c := range root.Commands() {
		if c.Name() == "completion" {
			c.Args, c.RunE = noSuchCommand, func(cmd *cobra.Command, _ []string) error { return cmd.Help() }
		}
	}
}

// flagTrouble says what is wrong with the value of a flag in the cook's words.
func flagTrouble(err error) string {
	var invalid *pflag.InvalidValueError
	if !errors.As(err, &invalid) {
		return err.Error()
	}
	kinds := map[string]string{"int": "a whole number", "float64": "a number", "bool": "true or false"}
	f := invalid.GetFlag()
	kind, ok := kinds[f.Value.Type()]
	if !ok {
		return err.Error()
	}
	return fmt.Sprintf("--%s: %q is not %s", f.Name, invalid.GetValue(), kind)
}

// noSuchCommand answers what is no command, with the nearest ones.
func noSuchCommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	hint := ""
	if near := cmd.SuggestionsFor(args[0]); len(near) > 0 {
		hint = fmt.Sprintf(" did you mean %s?", strings.Join(near, " or "))
	}
	return usage("%s: is no command of cookday;%s see cookday --help", args[0], hint)
}

// operands asks for exactly these arguments, named as the help names them.
func operands(names ...string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		switch {
		case len(args) < len(names):
			return usage("%s: %s is missing; see %s --help", cmd.CommandPath(), names[len(args)], cmd.CommandPath())
		case len(args) > len(names):
			return usage("%s: %q is one argument too many; see %s --help", cmd.CommandPath(), args[len(names)], cmd.CommandPath())
		}
		return nil
	}
}
