package sley_test

import (
	"testing"

	"sley/internal/face/web/browsing"
)

// TestMain ends the browser that the first command was looked at with.
func TestMain(m *testing.M) { browsing.Main(m) }
