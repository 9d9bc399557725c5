package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"text/tabwriter"
	"time"

	"github.com/spf13/cobra"

	"example.com/cookday/api"
	"example.com/cookday/api/store"
)

// storeFlags name the file of plans.
type storeFlags struct{ file string }

func storeCommand() *cobra.Command {
	var s storeFlags
	cmd := &cobra.Command{
		Use:   "store",
		Short: "Look after the plans that listen keeps",
		Long: `store lists, saves and removes the plans that listen keeps in its file. The
service may go on meanwhile.`,
		Args: noSuchCommand,
		RunE: func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	cmd.PersistentFlags().StringVar(&s.file, "store", "", "`file` that plans are kept in, or the address of a database, postgres://user@host/name (if not given: cookday/plans.db in your config directory)")
	cmd.AddCommand(s.listCommand(), s.exportCommand(), s.importCommand(), s.dropCommand(), s.deadCommand())
	return cmd
}

// open opens the file, which must be there: only listen makes one, and import.
func (s *storeFlags) open(ctx context.Context, fresh bool) (api.Store, error) {
	switch {
	case s.file == storeMemory:
		return nil, usage("--store: %s is gone when the service ends; name a file", storeMemory)
	case store.IsPostgres(s.file):
		p, err := store.OpenPostgres(ctx, s.file)
		if err != nil {
			return nil, usage("--store: %s", err)
		}
		return p, nil
	}
	if s.file == "" {
		file, err := usualStore()
		if err != nil {
			return nil, usage("--store: %s", err)
		}
		s.file = file
	}
	if _, err := os.Stat(s.file); err != nil && !fresh {
		return nil, usage("--store: %s", err)
	}
	f, err := store.OpenFile(ctx, s.file)
	if err != nil {
		return nil, usage("--store: %s", err)
	}
	return f, nil
}

// usualStore is the file of plans if none is named.
func usualStore() (string, error) {
	dir, err := os.UserConfigDir()
	if err != nil {
		return "", fmt.Errorf("name a file, or say %s: %w", storeMemory, err)
	}
	return filepath.Join(dir, "cookday", "plans.db"), nil
}

// storePage is how many plans are read at a time.
const storePage = 100

// each hands over every plan, the newest first.
func each(ctx context.Context, f api.Store, do func(api.Record) error) error {
	for after := ""; ; {
		list, err := f.List(ctx, after, storePage)
		if err != nil {
			return err
		}
		for _, r := range list {
			if err := do(r); err != nil {
				return err
			}
			after = r.ID
		}
		if len(list) < storePage {
			return nil
		}
	}
}

func (s *storeFlags) listCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "list",
		Short: "List the plans, the newest first",
		Args:  operands(),
		RunE: func(cmd *cobra.Command, _ []string) error {
			f, err := s.open(cmd.Context(), false)
			if err != nil {
				return err
			}
			defer f.Close()
			w := tabwriter.NewWriter(cmd.OutOrStdout(), 0, 0, 2, ' ', 0)
			fmt.Fprintln(w, "plan\tserved\tchanged\trevision\tname")
			err = each(cmd.Context(), f, func(r api.Record) error {
				_, err := fmt.Fprintf(w, "%s\t%s\t%s\t%d\t%s\n", r.ID, minute(r.Serve), minute(r.Changed), r.Newest, r.Name)
				return err
			})
			if err != nil {
				return err
			}
			return w.Flush()
		},
	}
}

func minute(t time.Time) string { return t.UTC().Format("2006-01-02 15:04Z") }

func (s *storeFlags) exportCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "export",
		Short: "Print all plans with their revisions and readings, one per line",
		Long: `export prints a line of JSON for each plan, the oldest first, with everything that
is kept of it. The addresses of plans are secrets: keep the output like the file.`,
		Example: "  cookday store export > plans.jsonl",
		Args:    operands(),
		RunE: func(cmd *cobra.Command, _ []string) error {
			f, err := s.open(cmd.Context(), false)
			if err != nil {
				return err
			}
			defer f.Close()
			return exportPlans(cmd.Context(), f, cmd.OutOrStdout())
		},
	}
}

func (s *storeFlags) importCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "import FILE",
		Short: "Keep the plans of an export",
		Long: `import keeps the plans that export has printed (- for standard input). A plan that
is there already is passed over, and what is newer of it too.`,
		Example: "  cookday store import plans.jsonl --store new.db",
		Args:    operands("FILE"),
		RunE: func(cmd *cobra.Command, args []string) error {
			var in io.Reader = cmd.InOrStdin()
			if args[0] != "-" {
				file, err := os.Open(args[0])
				if err != nil {
					return usage("%s: %s", args[0], err)
				}
				defer file.Close()
				in = file
			}
			f, err := s.open(cmd.Context(), true)
			if err != nil {
				return err
			}
			defer f.Close()
			kept, known, err := importPlans(cmd.Context(), f, in)
			if err != nil {
				return usage("%s: %s", args[0], err)
			}
			fmt.Fprintf(cmd.OutOrStdout(), "%d plans kept, %d were there\n", kept, known)
			return nil
		},
	}
}

func (s *storeFlags) dropCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "drop PLAN",
		Short: "Remove a plan with everything that is kept of it",
		Args:  operands("PLAN"),
		RunE: func(cmd *cobra.Command, args []string) error {
			f, err := s.open(cmd.Context(), false)
			if err != nil {
				return err
			}
			defer f.Close()
			if err := f.Delete(cmd.Context(), args[0]); err != nil {
				return usage("%s: %s", args[0], err)
			}
			return nil
		},
	}
}
