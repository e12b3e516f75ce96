package book

import (
	"context"
	"database/sql"
	"database/sql/driver"
	"fmt"
	"io"
	"net/url"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"

	"modernc.org/sqlite"

	"sley/internal/trade/record"
)

// Locks of the open file belong to the file description, not to the process, where
// the system has such locks: else closing any other handle of the file would drop them.
var lockByFile = sync.OnceFunc(func() {
	if runtime.GOOS == "linux" {
		sqlite.OFDLocking(true)
	}
})

// mode says what a connection is for.
type mode int

const (
	writing  mode = iota
	reading       // beside a writer of this process
	peeking       // of a book that may belong to another process, or be no book
	resting       // of a book in a folder where nothing may be made, so that nobody can write to it
	mending       // of a file whose making was broken off
	checking      // of a whole file: one that could write, for SQLite reads no CHECK where it cannot
)

// pragma is a setting of a connection, and what must be read back.
type pragma struct{ name, set, back string }

// asked are the settings of every connection that can write or reads beside one. FULL
// makes SQLite wait for the disk at each commit; fullfsync makes macOS really do so.
var asked = []pragma{
	{"busy_timeout", "5000", "5000"},
	{"journal_mode", "WAL", "wal"},
	{"synchronous", "FULL", "2"},
	{"foreign_keys", "1", "1"},
	{"fullfsync", "1", "1"},
	{"checkpoint_fullfsync", "1", "1"},
	{"trusted_schema", "0", "0"},
	{"cell_size_check", "1", "1"},
	{"journal_size_limit", mostJournal, mostJournal},
	{"cache_size", "-16384", "-16384"}, // KiB
}

// mostJournal is how large an emptied journal may stay, in bytes: one that grew while
// somebody read for long is cut.
const mostJournal = "16777216"

// settings are what is asked of a connection of that mode.
func (m mode) settings() []pragma {
	switch m {
	case reading:
		return append(asked[:len(asked):len(asked)], pragma{"query_only", "1", "1"})
	case checking:
		return append(m.plain(), pragma{"query_only", "1", "1"})
	case peeking, resting, mending:
		return m.plain()
	}
	return asked
}

// plain are the settings of a connection that leaves the file as it is.
func (mode) plain() []pragma {
	return []pragma{{"busy_timeout", "5000", "5000"}, {"trusted_schema", "0", "0"}}
}

// address is the URI of a book's file for that mode.
func address(path string, m mode, settings []pragma) string {
	file := filepath.ToSlash(path)
	if !strings.HasPrefix(file, "/") {
		file = "/" + file // C:/…
	}
	query := url.Values{}
	for _, p := range settings {
		query.Add("_pragma", p.name+"("+p.set+")")
	}
	switch m {
	case writing:
		query.Set("_txlock", "immediate")
	case peeking:
		query.Set("mode", "ro")
	case resting:
		query.Set("mode", "ro")
		query.Set("immutable", "1")
	case checking:
		query.Set("mode", "rw")
	}
	return (&url.URL{Scheme: "file", Path: file, RawQuery: query.Encode()}).String()
}

// connector opens connections that do what was asked of them, or none.
type connector struct {
	driver.Connector
	path     string
	settings []pragma
}

// connect gives a pool of at most that many connections.
func connect(path string, m mode, most int) (*sql.DB, error) { return connectWith(path, m, most, nil) }

// connectWith lets set change what is asked of a connection.
func connectWith(path string, m mode, most int, set func(mode, []pragma) []pragma) (*sql.DB, error) {
	settings := m.settings()
	if set != nil {
		settings = set(m, slices.Clone(settings))
	}
	lockByFile()
	full, err := filepath.Abs(path)
	if err != nil {
		return nil, err
	}
	inner, err := sqlite.NewConnector(address(full, m, settings))
	if err != nil {
		return nil, err
	}
	db := sql.OpenDB(&connector{Connector: inner, path: path, settings: settings})
	db.SetMaxOpenConns(most)
	db.SetMaxIdleConns(most)
	return db, nil
}

// Connect opens a connection and reads its settings back.
func (c *connector) Connect(ctx context.Context) (driver.Conn, error) {
	conn, err := c.Connector.Connect(ctx)
	if err != nil {
		return nil, err
	}
	for _, p := range c.settings {
		if err := readBack(ctx, conn, p, c.path); err != nil {
			conn.Close()
			return nil, err
		}
	}
	return conn, nil
}

// readBack says whether the connection has taken a setting.
func readBack(ctx context.Context, conn driver.Conn, p pragma, path string) error {
	got, err := pragmaOf(ctx, conn, p.name)
	if err != nil || got == p.back {
		return err
	}
	if p.name == "journal_mode" {
		return &record.Trouble{Code: record.NoJournal, Path: path, Found: got}
	}
	return fmt.Errorf("internal error: the book's %s is %s, not %s: please report this", p.name, got, p.back)
}

// pragmaOf gives a setting as it stands.
func pragmaOf(ctx context.Context, conn driver.Conn, name string) (string, error) {
	rows, err := conn.(driver.QueryerContext).QueryContext(ctx, "PRAGMA "+name, nil)
	if err != nil {
		return "", err
	}
	defer rows.Close()
	row := make([]driver.Value, len(rows.Columns()))
	if err := rows.Next(row); err == io.EOF {
		return "", nil
	} else if err != nil {
		return "", err
	}
	return fmt.Sprint(row[0]), nil
}
