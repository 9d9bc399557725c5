package export

import (
	"fmt"
	"io"

	"example.com/cookday/schedule"
)

// Pictures that [Picture] draws.
const (
	PictureTimeline = "timeline"
	PictureCurves   = "curves"
	PictureGrate    = "grate"
)

// Picture draws the picture that the options name, the timeline if they name
// none. The error names a picture that does not exist, a time zone that is not
// known, or is that of the writer.
func Picture(w io.Writer, p schedule.Plan, o Options) error {
	switch o.Picture {
	case "", PictureTimeline:
		return Timeline(w, p, o)
	case PictureCurves:
		return Curves(w, p, o)
	case PictureGrate:
		return GrateMap(w, p, 0)
	}
	return fmt.Errorf("picture: %q is not one of %s, %s or %s", o.Picture, PictureTimeline, PictureCurves, PictureGrate)
}
