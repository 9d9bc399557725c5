package testdb

import (
	"context"
	"flag"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
)

var (
	address = flag.String("postgres", "", "address of a PostgreSQL database in which schemas may be made")
	data    = flag.String("postgres-data", "", "directory of its server, which may then be killed")
	start   = flag.String("postgres-start", "", "command that starts it again")
	schemas atomic.Int64
)

// Named says whether there is a database.
func Named() bool { return *address != "" }

// Schema is the address of a schema of this test alone, which goes with the test.
func Schema(t testing.TB) string {
	t.Helper()
	if !Named() {
		t.Skip("no database is named by a flag")
	}
	u, err := url.Parse(*address)
	if err != nil {
		t.Fatal(err)
	}
	name := fmt.Sprintf("test_%d_%d", os.Getpid(), schemas.Add(1))
	q := u.Query()
	q.Set("search_path", name)
	u.RawQuery = q.Encode()
	t.Cleanup(func() { Do(t, "DROP SCHEMA IF EXISTS "+name+" CASCADE") })
	return u.String()
}

// Do does something by a line of its own.
func Do(t testing.TB, statement string) {
	t.Helper()
	ctx := context.Background()
	c, err := pgx.Connect(ctx, *address)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close(ctx)
	if _, err = c.Exec(ctx, statement); err != nil {
		t.Fatal(err)
	}
}

// Mortal skips a test if no server that may be killed is named.
func Mortal(t testing.TB) {
	t.Helper()
	if !Named() || *data == "" || *start == "" {
		t.Skip("no server that may be killed is named by flags")
	}
}

// Kill kills the server as a loss of power would, and starts it again after a while.
func Kill(t testing.TB, after time.Duration) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(*data, "postmaster.pid"))
	if err != nil {
		t.Fatal(err)
	}
	line, _, _ := strings.Cut(string(text), "\n")
	pid, err := strconv.Atoi(line)
	if err != nil {
		t.Fatal(err)
	}
	server, err := os.FindProcess(pid)
	if err == nil {
		err = server.Kill()
	}
	if err != nil {
		t.Fatal(err)
	}
	time.Sleep(after)
	var out []byte
	for range 50 { // what is left of it goes once it has noticed
		if out, err = exec.Command("sh", "-c", *start).CombinedOutput(); err == nil {
			return
		}
		time.Sleep(200 * time.Millisecond)
	}
	t.Fatalf("the server does not come back: %v %s", err, out)
}
