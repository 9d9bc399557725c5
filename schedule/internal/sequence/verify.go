package sequence

import "errors"

// Verify checks a plan against the problem without the code that made it. The
// error names the rule that is broken.
func Verify(p *Problem, s *Solution) error { return errors.New("no plan to verify yet") }
