package present

import "testing"

// Names of pieces in the plural, as far as they are plain words.
func TestCounted(t *testing.T) {
	for name, want := range map[string]string{
		"towel": "3 towels", "scarf": "3 scarves", "tea cloth": "3 tea cloths", "mats": "3 mats", "sash": "3 sashes",
		"baby": "3 babies", "key bay": "3 key bays", "runner for Ada": "3 × runner for Ada", "løber": "3 × løber", "": "3 pieces", "box": "3 boxes",
	} {
		if got := Counted(3, name); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
	if got := Counted(1, "scarf"); got != "scarf" {
		t.Errorf("one: %q", got)
	}
}

// What stands in the numbers' stage.
func TestCareWords(t *testing.T) {
	for _, test := range []struct {
		wrong, care int
		want        string
	}{{0, 0, "all fits"}, {0, 1, "1 thing needs care"}, {0, 2, "2 things need care"}, {1, 5, "1 thing to mend"}, {3, 0, "3 things to mend"}} {
		if got := CareWords(test.wrong, test.care); got != test.want {
			t.Errorf("%d, %d: %q, want %q", test.wrong, test.care, got, test.want)
		}
	}
}
