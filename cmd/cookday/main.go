// Command cookday plans a cook day on one grill from a file that says what is on
// the menu and when people eat.
package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"
	"time"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run is main without the process around it: it returns the exit code.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	return runAt(time.Now, args, stdin, stdout, stderr)
}

// runAt is run with a clock of its own.
func runAt(clock func() time.Time, args []string, stdin io.Reader, stdout, stderr io.Writer) (code int) {
	defer func() {
		if fault := recover(); fault != nil { // a cook at five in the morning has no use for a stack trace
			fmt.Fprintf(stderr, "cookday: a fault of this program, please report it: %v\n", fault)
			code = exitFault
		}
	}()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	root := rootCommand()
	root.SetArgs(args)
	root.SetIn(stdin)
	root.SetOut(stdout)
	root.SetErr(stderr)
	strictCompletion(root)
	return report(stderr, root.ExecuteContext(withClock(ctx, clock)))
}
