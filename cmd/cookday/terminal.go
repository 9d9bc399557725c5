package main

import (
	"io"
	"os"

	"golang.org/x/term"
)

// Columns of a text: what a printer or a file gets, and the widest that is still
// read with ease.
const (
	usualColumns  = 80
	widestColumns = 100
)

// terminal tells how wide a text may be and whether it may have colours. Only a
// terminal gets colours, and none where NO_COLOR is set (no-color.org).
func terminal(w io.Writer) (columns int, colour bool) {
	f, ok := w.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return usualColumns, false
	}
	columns, _, err := term.GetSize(int(f.Fd()))
	if err != nil || columns <= 0 {
		columns = usualColumns
	}
	return min(columns, widestColumns), os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"
}
