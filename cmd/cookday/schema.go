package main

import (
	"io"
	"strings"

	"github.com/spf13/cobra"

	"example.com/cookday/schedule"
)

func schemaCommand() *cobra.Command {
	var out string
	cmd := &cobra.Command{
		Use:   "schema [NAME]",
		Short: "Print the JSON Schema of a request, a log entry or a plan",
		Long: `schema prints a JSON Schema (2020-12) of a request, of an entry of a log, or of a
plan, which editors complete and check by. Without NAME it is that of a request.
It says which fields there are, of which kind; cookday check says the rest.`,
		Example: "  cookday schema request --out cookday.schema.json\n  cookday schema plan",
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) > 1 {
				return usage("%s: %q is one argument too many; see %s --help", cmd.CommandPath(), args[1], cmd.CommandPath())
			}
			return nil
		},
		ValidArgs: schemaNames(),
		RunE: func(cmd *cobra.Command, args []string) error {
			name := strings.Join(append(args, string(schedule.SchemaRequest))[:1], "")
			text, ok := schedule.Schema(schedule.SchemaOf(name))
			if !ok {
				return oneOf("schema", name, schemaNames()...)
			}
			return emit(cmd.OutOrStdout(), out, func(w io.Writer) error { _, err := w.Write(text); return err })
		},
	}
	cmd.Flags().StringVarP(&out, "out", "o", "", "`file` to write, instead of standard output")
	return cmd
}

func schemaNames() []string {
	var names []string
	for _, of := range schedule.Schemas() {
		names = append(names, string(of))
	}
	return names
}
