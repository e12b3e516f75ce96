package web_test

import (
	"testing"

	"sley/internal/face/web/browsing"
)

// TestMain ends the browsers that the tests share.
func TestMain(m *testing.M) { browsing.Main(m) }
