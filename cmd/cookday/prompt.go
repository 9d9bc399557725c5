package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"example.com/cookday/schedule/export"
)

// prompt asks on a terminal or on a pipe, which shows the same.
type prompt struct {
	in   *bufio.Reader
	out  io.Writer
	echo bool // no terminal shows what is typed
}

func newPrompt(cmd *cobra.Command, aside bool) *prompt {
	p := &prompt{in: bufio.NewReader(cmd.InOrStdin()), out: cmd.OutOrStdout(), echo: true}
	if aside {
		p.out = cmd.ErrOrStderr()
	}
	if f, ok := cmd.InOrStdin().(*os.File); ok && term.IsTerminal(int(f.Fd())) {
		p.echo = false
	}
	return p
}

// ask puts a question and reads one line, or what it stands for where it is empty. The
// error is io.EOF where there are no more lines.
func (p *prompt) ask(question, usual string) (string, error) {
	p.say(question)
	if usual != "" {
		fmt.Fprintf(p.out, "[%s] ", usual)
	}
	fmt.Fprint(p.out, "> ")
	line, err := p.in.ReadString('\n')
	line = strings.TrimSpace(line)
	if p.echo {
		fmt.Fprintln(p.out, line)
	}
	if line != "" {
		err = nil // the last line may have no end
	}
	return line, err
}

// say prints a text in lines that fit.
func (p *prompt) say(text string) {
	for _, line := range export.Wrap(text, usualColumns) {
		fmt.Fprintln(p.out, line)
	}
}
