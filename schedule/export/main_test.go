package export_test

import (
	"testing"

	"example.com/cookday/schedule/internal/testbed"
)

func TestMain(m *testing.M) { testbed.Main(m) }
