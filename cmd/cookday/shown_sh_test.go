package main

import (
	"bufio"
	"context"
	"io"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"
)

// serveHere is the address of a service of this process, until the test ends.
func serveHere(t *testing.T) string {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	r, w := io.Pipe()
	cmd := rootCommand()
	cmd.SetArgs([]string{"listen", "--store", "memory", "--address", "127.0.0.1:0", "--log", "none"})
	cmd.SetOut(w)
	done := make(chan error)
	go func() { done <- cmd.ExecuteContext(ctx) }()
	line, err := bufio.NewReader(r).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		cancel()
		if err := <-done; err != nil {
			t.Error(err)
		}
	})
	address, _, _ := strings.Cut(strings.TrimPrefix(line, "listening on "), ",")
	return strings.TrimSpace(address)
}

// shellBlocks are the lines of the blocks of a text that call the service.
func shellBlocks(text string) (blocks []string) {
	for _, part := range strings.Split(text, "```sh\n")[1:] {
		if block, _, _ := strings.Cut(part, "```"); strings.Contains(block, "http://127.0.0.1:8018") && !strings.Contains(block, "127.0.0.1:8017") && !strings.Contains(block, "cookday listen") { // those of two processes have a test of their own
			blocks = append(blocks, block)
		}
	}
	return blocks
}

// What README.md and DEVELOPERS.md have one type to ask the service is answered.
func TestShownCallsAreAnswered(t *testing.T) {
	bash, err := exec.LookPath("bash")
	version, failed := exec.Command("curl", "--version").Output()
	if err != nil || failed != nil || !regexp.MustCompile(`^curl (7\.8[4-9]|7\.9|[89]\.|[1-9]\d)`).Match(version) {
		t.Skip("it needs bash and curl 7.84 or later")
	}
	t.Chdir("../..")
	address := serveHere(t)
	calls := 0
	for _, name := range []string{"README.md", "DEVELOPERS.md"} {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, block := range shellBlocks(string(text)) {
			calls += strings.Count(block, "curl ")
			script := strings.NewReplacer("http://127.0.0.1:8018", address, "curl -s", "curl -sSf", "-o plan.json", "-o /dev/null").Replace(block)
			out, err := exec.Command(bash, "-e", "-c", script).CombinedOutput()
			if err != nil || strings.Contains(string(out), `"faults"`) {
				t.Errorf("%s\n%s%v\n%s", name, script, err, out)
			}
		}
	}
	if calls < 6 {
		t.Errorf("only %d calls were found", calls)
	}
}

// The command that steers a fire without a plan is shown as it can be typed.
func TestShownFireIsAnswered(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	args := regexp.MustCompile("`cookday (fire --[^`]+)`").FindStringSubmatch(string(text))
	if args == nil {
		t.Fatal("README.md shows no fire")
	}
	if said := mustRun(t, "", strings.Fields(args[1])...); !strings.Contains(said, "vent") {
		t.Errorf("%s", said)
	}
}
