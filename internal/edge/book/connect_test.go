package book

import (
	"context"
	"database/sql"
	"path/filepath"
	"testing"

	"sley/internal/trade/record"
)

// every takes all connections of a pool at once.
func every(t *testing.T, db *sql.DB, n int, see func(*sql.Conn)) {
	t.Helper()
	for range n {
		conn, err := db.Conn(t.Context())
		if err != nil {
			t.Fatal(err)
		}
		defer conn.Close()
		see(conn)
	}
	if open := db.Stats().OpenConnections; open != n {
		t.Errorf("%d connections are open, not %d", open, n)
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if conn, err := db.Conn(ctx); err == nil {
		conn.Close()
		t.Errorf("there are more than %d connections", n)
	}
}

func TestEveryConnectionHasItsSettings(t *testing.T) {
	b := scratch(t)
	for _, pool := range []struct {
		db   *sql.DB
		n    int
		want map[string]string
	}{
		{b.writer, 1, map[string]string{"query_only": "0"}},
		{b.reader, poolSize, map[string]string{"query_only": "1"}},
	} {
		for name, value := range map[string]string{
			"journal_mode": "wal", "synchronous": "2", "foreign_keys": "1", "busy_timeout": "5000", "fullfsync": "1",
			"checkpoint_fullfsync": "1", "trusted_schema": "0", "cell_size_check": "1", "journal_size_limit": "16777216",
			"cache_size": "-16384", "recursive_triggers": "0", "locking_mode": "normal", "ignore_check_constraints": "0",
			"writable_schema": "0", "mmap_size": "0", "encoding": "UTF-8", "application_id": "1397507417",
		} {
			pool.want[name] = value
		}
		every(t, pool.db, pool.n, func(conn *sql.Conn) {
			for name, want := range pool.want {
				var got string
				if err := conn.QueryRowContext(t.Context(), "PRAGMA "+name).Scan(&got); err != nil || got != want {
					t.Errorf("%s is %q, not %q, %v", name, got, want, err)
				}
			}
		})
	}
}

// A connection on which a setting is not taken is refused, whichever it is.
func TestAConnectionWithoutItsSettingsIsRefused(t *testing.T) {
	other := map[string]string{
		"busy_timeout": "1", "journal_mode": "DELETE", "synchronous": "NORMAL", "foreign_keys": "0", "fullfsync": "0",
		"checkpoint_fullfsync": "0", "trusted_schema": "1", "cell_size_check": "0", "journal_size_limit": "-1",
		"cache_size": "-10", "query_only": "0",
	}
	for _, m := range []mode{writing, reading, peeking} {
		for _, setting := range m.settings() {
			path := filepath.Join(t.TempDir(), "book.sley")
			_, err := Open(t.Context(), Asked{
				Path: path, Now: at(noon), Create: true,
				set: func(now mode, all []pragma) []pragma {
					for i := range all {
						if now == m && all[i].name == setting.name {
							all[i].set = other[setting.name]
						}
					}
					return all
				},
			})
			if m == peeking { // this mode opens what is there, and sees to itself
				err = refusedPeek(t, setting, other[setting.name])
			}
			if err == nil {
				t.Errorf("mode %d: a connection without %s was not refused", m, setting.name)
			}
			if setting.name == "journal_mode" && m == writing && !record.Is(err, record.NoJournal) {
				t.Errorf("mode %d without a journal: %v", m, err)
			}
		}
	}
}

func refusedPeek(t *testing.T, setting pragma, other string) error {
	t.Helper()
	db, err := connectWith(filepath.Join(t.TempDir(), "x"), mending, 1, func(mode, []pragma) []pragma {
		return []pragma{{setting.name, other, setting.back}}
	})
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	return db.PingContext(t.Context())
}
