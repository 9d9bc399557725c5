package export

import (
	"encoding/json"
	"io"

	"example.com/cookday/schedule"
)

// JSON writes the plan itself, indented, with a newline at its end. Texts are
// written as they are, so that they read well; who puts the result into a web page
// has to escape it there. The error is that of the writer.
func JSON(w io.Writer, p schedule.Plan) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(p)
}
