package memory_test

import (
	"fmt"
	"testing"

	"sley/internal/trade/record"
)

// shelf are drafts with figures of all sizes, in no order.
func shelf(t *testing.T, b record.Book) {
	t.Helper()
	weaves := []string{"", "plain", "twill"}
	write(t, b, func(w record.Writer) error {
		for i := range 60 {
			d := draft(fmt.Sprintf("d%02d", (i*37)%60))
			d.Sort = []byte{byte((i * 37) % 60 / 7)} // several of a key
			if i%4 > 0 {
				d.Facts = record.Facts{Of: 1, Engine: 1, Shafts: i % 9, Treadles: i % 7, LongestFloat: i % 5, Weave: weaves[i%3], Stage: []string{record.Planned, record.Done}[i/3%2]}
			}
			v := first("{}")
			v.Removed = i%11 == 0
			if _, err := w.Add(d, v); err != nil {
				return err
			}
		}
		return added(w, record.Document{Kind: record.Yarn, Mark: "mark-of-a-yarn", Card: card("d99")})
	})
}

// Each filter is tried alone and with all others, against the plain meaning of its words.
func TestListsFilter(t *testing.T) {
	both(t, func(t *testing.T, b record.Book) {
		shelf(t, b)
		var all []record.Document
		read(t, b, func(r record.Reader) (err error) { all, err = r.All(); return err })
		for i := range 3 * 3 * 3 * 3 * 2 * 3 {
			q := record.Query{
				Kind: record.Draft, MostShafts: i % 3 * 3, MostTreadles: i / 3 % 3 * 2, MostFloat: i / 9 % 3 * 2,
				Weave: []string{"", "twill", "lace"}[i/27%3], Removed: i/81%2 == 1, Stage: []string{"", record.Done, record.InHand}[i/162], Most: 100,
			}
			want := map[string]bool{}
			for _, d := range all {
				f := d.Facts
				if d.Kind == record.Draft && d.Removed == q.Removed && (q.Weave == "" || q.Weave == f.Weave) && (q.Stage == "" || q.Stage == f.Stage || q.Stage == record.InHand && f.Stage != record.Done) &&
					(q.MostShafts == 0 || f.Shafts > 0 && f.Shafts <= q.MostShafts) &&
					(q.MostTreadles == 0 || f.Treadles <= q.MostTreadles) &&
					(q.MostFloat == 0 || f.LongestFloat > 0 && f.LongestFloat <= q.MostFloat) {
					want[d.Name] = true
				}
			}
			got := map[string]bool{}
			read(t, b, func(r record.Reader) error {
				docs, total, err := r.List(q)
				for _, d := range docs {
					got[d.Name] = true
				}
				if total != len(want) || len(docs) != total {
					t.Errorf("%+v: %d in all, %d given, want %d", q, total, len(docs), len(want))
				}
				return err
			})
			if diff := same(want, got); diff != "" {
				t.Errorf("%+v: %s", q, diff)
			}
		}
	})
}

// Pages put together are the whole list, each document once, also where many have one
// sort key, and whatever size the pages have.
func TestPagesMakeTheList(t *testing.T) {
	both(t, func(t *testing.T, b record.Book) {
		shelf(t, b)
		for _, q := range []record.Query{{}, {MostShafts: 6}, {Words: "d"}, {Words: "d1"}} {
			q.Kind, q.Most = record.Draft, 1000
			read(t, b, func(r record.Reader) error {
				all, total, err := r.List(q)
				for _, most := range []int{0, 1, 2, 7, 1000} {
					if got := paged(t, r, q, most, total); names(got) != names(all) {
						t.Errorf("%+v in pages of %d: %s, not %s", q, most, names(got), names(all))
					}
				}
				return err
			})
		}
	})
}

func paged(t *testing.T, r record.Reader, q record.Query, most, total int) []record.Document {
	t.Helper()
	var out []record.Document
	q.Most = most
	for {
		page, n, err := r.List(q)
		if err != nil || n != total {
			t.Fatalf("%d in all, not %d, %v", n, total, err)
		}
		if len(page) == 0 {
			return out
		}
		if len(page) > max(most, 1) {
			t.Fatalf("a page of %d has %d", most, len(page))
		}
		out = append(out, page...)
		last := page[len(page)-1]
		q.After, q.AfterID = last.Sort, last.ID
	}
}

func TestAnEmptyKeyIsAKey(t *testing.T) {
	both(t, func(t *testing.T, b record.Book) {
		for _, name := range []string{"one", "two", "three"} {
			d := draft(name)
			d.Sort = nil
			add(t, b, d, "")
		}
		read(t, b, func(r record.Reader) error {
			if got := names(paged(t, r, record.Query{Kind: record.Draft}, 1, 3)); got != "one two three" {
				t.Error(got)
			}
			return nil
		})
	})
}

func TestSearchGoesByTheBeginningsOfWords(t *testing.T) {
	const (
		exam = "Pru\u0308fung" // its accent a character of its own
		all  = "8/2 cotton crème brûlée Kräuter-Tuch " + exam + " Ærø NEAR 🧶 ball"
	)
	both(t, func(t *testing.T, b record.Book) {
		for name, words := range map[string]string{
			"Kräuter-Tuch": "leinen ½ weiß", "crème brûlée": "wool", "Ærø NEAR": "ΣΊΣΥΦΟΣ", "8/2 cotton": "naïve İstanbul",
			exam: "テスト 한국어 हिन्दी", "🧶 ball": "ⅷ a\u0301b",
		} {
			d := draft(name)
			d.Words = words
			add(t, b, d, "")
		}
		for search, want := range map[string]string{
			"":     all,
			"krau": "Kräuter-Tuch", "KRÄUTER tu": "Kräuter-Tuch", "tuch-kräut": "Kräuter-Tuch", "raut": "",
			"weiß": "Kräuter-Tuch", "WEIẞ": "Kräuter-Tuch", "½": "Kräuter-Tuch", "creme BRULEE": "crème brûlée", "creme x": "",
			"near": "Ærø NEAR", "NEAR(": "Ærø NEAR", "σίσυφος": "Ærø NEAR", "ΣΙΣΥΦΟΣ": "Ærø NEAR", "ærø": "Ærø NEAR",
			"8": "8/2 cotton", "8/2": "8/2 cotton", "2/8": "8/2 cotton", "NAIVE": "8/2 cotton", "istanbul": "8/2 cotton",
			"prufung": exam, "prüf": exam, "pru\u0308f": exam, "テス": exam, "한국": exam, "हिन": exam,
			"áb": "🧶 ball", "🧶": all,
			`"`: all, `krau" OR "near`: "",
			"*": all, "co*tton": "", "cott*": "8/2 cotton",
			"words:krau": "", "NOT near": "", "near AND": "", "krau\x00ter": "", "krau\xfftuch": "Kräuter-Tuch", "- ^ + {}": all,
		} {
			read(t, b, func(r record.Reader) error {
				docs, n, err := r.List(record.Query{Kind: record.Draft, Words: search, Most: 100})
				if names(docs) != want || n != len(docs) {
					t.Errorf("%q finds %q, not %q", search, names(docs), want)
				}
				return err
			})
		}
	})
}

// What an edit takes out of the name or the words is found no more.
func TestSearchFollowsTheNewestVersion(t *testing.T) {
	both(t, func(t *testing.T, b record.Book) {
		id := add(t, b, draft("towel"), "")
		for i, c := range []record.Card{{Name: "towel", Words: "linen"}, {Name: "scarf", Words: "linen"}, {Name: "scarf", Words: "wool"}} {
			write(t, b, func(w record.Writer) error { return w.Append(edit(id, i+2, fmt.Sprint(i)), c) })
			for _, word := range []string{"towel", "scarf", "linen", "wool"} {
				want := word == c.Name || word == c.Words
				read(t, b, func(r record.Reader) error {
					_, n, err := r.List(record.Query{Kind: record.Draft, Words: word, Most: 1})
					if (n == 1) != want {
						t.Errorf("after %+v %q finds %d", c, word, n)
					}
					return err
				})
			}
		}
	})
}
