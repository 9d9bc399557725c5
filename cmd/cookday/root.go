package main

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"example.com/cookday/schedule/export"
)

func rootCommand() *cobra.Command {
	root := &cobra.Command{
		Use:   "cookday",
		Short: "Plan a cook on one charcoal grill, and follow it",
		Long: `cookday plans a cook on one charcoal grill, back from the time people eat: when
to light, what goes on when and where, how much charcoal, and how sure it is. On
the day it says what to do now. Its times are predictions: the thermometer
decides.

  cookday new                            the first time: asks, writes your day
  cookday plan saturday.yaml             before the day: the whole sheet
  cookday note saturday.csv brisket 152  on the day: what you read or did
  cookday now saturday.yaml              on the day: what to do now

Exit codes: 0 fine, 1 the day cannot be done as asked (the plan that says why is
printed), 2 bad input, 3 a fault of this program or of the machine.`,
		Args:    noSuchCommand,
		Version: cmp.Or(version(), "of an unknown build"),

		SilenceErrors: true, // report prints them, one a line
		SilenceUsage:  true,

		SuggestionsMinimumDistance: 2, // letters
		RunE:                       func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	root.SetUsageTemplate(usageWords.Replace(root.UsageTemplate()))
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error {
		return usage("%s: %s; see %s --help", cmd.CommandPath(), flagTrouble(err), cmd.CommandPath())
	})
	grouped(root, "Before the day:", newCommand(), planCommand(), checkCommand(), forecastCommand(), amountsCommand(), cutsCommand(), layoutsCommand())
	grouped(root, "On the day:", nowCommand(), noteCommand(), reviseCommand(), fireCommand(), learnCommand())
	grouped(root, "For programs:", schemaCommand(), listenCommand(), storeCommand())
	root.AddCommand(topics()...)
	help := root.HelpFunc()
	root.SetHelpFunc(func(cmd *cobra.Command, args []string) { // made when it is asked for: other commands start without
		fitHelp(cmd)
		help(cmd, args)
	})
	root.InitDefaultHelpCmd()
	for _, c := range root.Commands() {
		if c.Name() == "help" {
			c.Short, c.GroupID = "Say more of a command, or of what is below", "For programs:"
		}
	}
	return root
}

// usageWords puts the template of the usage into our words.
var usageWords = strings.NewReplacer(
	".FlagUsages", fmt.Sprintf(".FlagUsagesWrapped %d", usualColumns),
	"Additional help topics:", "More to read:",
	"{{rpad .CommandPath .CommandPathPadding}}", "help {{rpad .Name 10}}",
	`Use "{{.CommandPath}} [command] --help" for more information about a command.`, "cookday help NAME says more of a command.",
)

// fitHelp sets the running text of a help in lines that fit; what is indented stays.
func fitHelp(cmd *cobra.Command) {
	paragraphs := strings.Split(cmd.Long, "\n\n")
	for i, p := range paragraphs {
		if !strings.Contains("\n"+p, "\n ") && strings.Count(p, "\n") > 0 {
			paragraphs[i] = strings.Join(export.Wrap(strings.ReplaceAll(p, "\n", " "), usualColumns-1), "\n")
		}
	}
	cmd.Long = strings.Join(paragraphs, "\n\n")
}

// grouped adds commands under a heading of the help.
func grouped(root *cobra.Command, title string, commands ...*cobra.Command) {
	root.AddGroup(&cobra.Group{ID: title, Title: title})
	for _, c := range commands {
		c.GroupID = title
	}
	root.AddCommand(commands...)
}

// strictCompletion adds the command for shell completion, which keeps where root
// prints to, and has it refuse a shell that it does not know.
func strictCompletion(root *cobra.Command) {
	root.InitDefaultCompletionCmd()
	for _, c := range root.Commands() {
		if c.Name() == "completion" {
			c.Short, c.GroupID = "Print the script for a shell to complete what you type", "For programs:"
			c.Long = `completion prints a script for your shell: with it the tab key completes
commands, flags, files, dishes and what may be noted of them.`
			c.Example = `  source <(cookday completion bash)
  cookday completion fish > ~/.config/fish/completions/cookday.fish`
			c.Args, c.RunE = noSuchCommand, func(cmd *cobra.Command, _ []string) error { return cmd.Help() }
			for _, shell := range c.Commands() {
				shell.Short = "Print the script for " + shell.Name()
			}
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
	near := slices.DeleteFunc(cmd.SuggestionsFor(args[0]), func(c string) bool { return !strings.HasPrefix(c, args[0][:min(1, len(args[0]))]) }) // short words are all near each other
	if len(near) > 0 {
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
		case len(args) > len(names) && cmd.Flags().Changed("brief") && strings.Trim(args[len(names)], "0123456789") == "":
			return usage("%s: write --brief=%s, with the equals sign", cmd.CommandPath(), args[len(names)])
		case len(args) > len(names):
			return usage("%s: %q is one argument too many; see %s --help", cmd.CommandPath(), args[len(names)], cmd.CommandPath())
		}
		return nil
	}
}
