package arrange

import (
	"fmt"
	"os"
	"strings"
	"testing"
)

// The limit of a day that README.md names is the one that holds; those of a request
// are looked at beside the request.
func TestReadmeNamesTheLimits(t *testing.T) {
	text, err := os.ReadFile("../../../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	readme := strings.Join(strings.Fields(string(text)), " ")
	if limit := fmt.Sprintf("%d loads of the grate", MostBatches); !strings.Contains(readme, limit) {
		t.Errorf("README.md does not say %q", limit)
	}
}
