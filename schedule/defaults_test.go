package schedule

import (
	"strings"
	"testing"
)

func TestIDs(t *testing.T) {
	tests := []struct{ dishes, want string }{
		{"Brisket|Wings|Brisket", "brisket wings brisket-2"},
		{"Wings|Brisket|Brisket", "wings brisket brisket-2"},
		{"Hot & Spicy!|Köfte", "hot-spicy köfte"},
		{"!!|--", "corn corn-2"}, // nothing left of the name: the cut
		{"=brisket|Brisket", "brisket brisket-2"},
		{"Brisket|=brisket", "brisket-2 brisket"},
		{strings.Repeat("very ", 30), strings.TrimSuffix(strings.Repeat("very-", 10)[:48], "-")},
	}
	for _, tt := range tests {
		var dishes []Dish
		for name := range strings.SplitSeq(tt.dishes, "|") {
			dish := Dish{Name: name, Cut: "corn"}
			if id, given := strings.CutPrefix(name, "="); given {
				dish = Dish{ID: id}
			}
			dishes = append(dishes, dish)
		}
		fillIDs(dishes)
		var got []string
		for _, d := range dishes {
			got = append(got, d.ID)
		}
		if strings.Join(got, " ") != tt.want {
			t.Errorf("%s: got %v, want %s", tt.dishes, got, tt.want)
		}
	}
}
