package book

import (
	"context"
	"database/sql"
	"embed"
	"fmt"
	"io/fs"
	"path"
	"strconv"
	"strings"

	"sley/internal/trade/record"
)

// applicationID marks a file as a book: "SLEY" in ASCII. It stands in the file's header.
const applicationID = 0x534c4559

//go:embed sql/*.sql
var schema embed.FS

// migration takes a book from the version before its own to its own.
type migration struct {
	version int
	name    string
	sql     string
}

// migrations reads the schema: sql/0001-name.sql and so on, one for each version.
func migrations(files fs.FS) ([]migration, error) {
	names, err := fs.Glob(files, "sql/*.sql")
	if err != nil {
		return nil, err
	}
	var out []migration
	for i, name := range names { // Glob sorts them
		number, rest, _ := strings.Cut(path.Base(name), "-")
		version, err := strconv.Atoi(number)
		if err != nil || version != i+1 {
			return nil, fmt.Errorf("internal error: %s is not migration %d", name, i+1)
		}
		text, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		out = append(out, migration{version, strings.TrimSuffix(rest, ".sql"), string(text)})
	}
	return out, nil
}

// state is what the header of a file says.
type state struct{ application, version, tables int }

// stateOf reads it.
func stateOf(ctx context.Context, q querier) (state, error) {
	var s state
	for query, to := range map[string]*int{
		"PRAGMA application_id": &s.application, "PRAGMA user_version": &s.version,
		"SELECT count(*) FROM sqlite_schema": &s.tables,
	} {
		if err := q.QueryRowContext(ctx, query).Scan(to); err != nil {
			return s, err
		}
	}
	return s, nil
}

// empty is a file that nobody has written to.
func (s state) empty() bool { return s == state{} }

// judge says whether this program can work with the file.
func (s state) judge(path string, newest int) error {
	switch {
	case s.empty():
		return nil
	case s.application != applicationID:
		return &record.Trouble{Code: record.NotABook, Path: path}
	case s.version > newest:
		return &record.Trouble{
			Code: record.Newer, Path: path,
			Found: strconv.Itoa(s.version), Known: strconv.Itoa(newest),
		}
	}
	return nil
}

// migrate takes the book to the newest version, each step whole or not at all. between
// may be nil; what it fails with breaks off.
func migrate(ctx context.Context, db *sql.DB, from int, steps []migration, between func(version, statement int) error) error {
	for _, m := range steps {
		if m.version <= from {
			continue
		}
		if err := m.run(ctx, db, between); err != nil {
			return fmt.Errorf("migrate the book to version %d (%s): %w", m.version, m.name, err)
		}
	}
	return nil
}

func (m migration) run(ctx context.Context, db *sql.DB, between func(version, statement int) error) error {
	tx, err := db.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer tx.Rollback()
	for i, statement := range m.all() {
		if between != nil {
			if err := between(m.version, i); err != nil {
				return err
			}
		}
		if _, err := tx.ExecContext(ctx, statement); err != nil {
			return err
		}
	}
	if err := sound(ctx, tx, "PRAGMA foreign_key_check"); err != nil {
		return err
	}
	return tx.Commit()
}

// all are the statements of a migration, with those that write its version into the
// file's header.
func (m migration) all() []string {
	return append(
		statements(m.sql),
		fmt.Sprintf("PRAGMA application_id = %d", applicationID), fmt.Sprintf("PRAGMA user_version = %d", m.version),
	)
}

// statements cuts a migration at the semicolons that end lines; comments fall away.
func statements(text string) []string {
	var out []string
	var now strings.Builder
	for line := range strings.Lines(text) {
		if strings.HasPrefix(strings.TrimSpace(line), "--") {
			continue
		}
		now.WriteString(line)
		if strings.HasSuffix(strings.TrimSpace(line), ";") {
			out = append(out, strings.TrimSpace(now.String()))
			now.Reset()
		}
	}
	if rest := strings.TrimSpace(now.String()); rest != "" {
		out = append(out, rest)
	}
	return out
}

// Complaints are what a check of SQLite's says: it answers with rows, and one that is
// only run, not read, finds nothing whatever the file holds.
func complaints(ctx context.Context, q querier, check string) ([]string, error) {
	rows, err := q.QueryContext(ctx, check)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	columns, err := rows.Columns()
	if err != nil {
		return nil, err
	}
	var out []string
	for rows.Next() {
		row := make([]any, len(columns))
		for i := range row {
			row[i] = new(any)
		}
		if err := rows.Scan(row...); err != nil {
			return nil, err
		}
		out = append(out, asText(row))
	}
	return out, rows.Err()
}

// asText is a row of a check as text.
func asText(row []any) string {
	var words []string
	for _, cell := range row {
		words = append(words, fmt.Sprint(*cell.(*any)))
	}
	return strings.Join(words, " ")
}

// sound fails when a check has complaints; the integrity checks say "ok" when not.
func sound(ctx context.Context, q querier, check string) error {
	found, err := complaints(ctx, q, check)
	if err != nil {
		return err
	}
	if len(found) == 0 || (len(found) == 1 && found[0] == "ok") {
		return nil
	}
	return &record.Trouble{Code: record.Damaged, Found: strings.Join(found, "; ")}
}

// querier is a pool, a connection or a transaction.
type querier interface {
	QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
	QueryRowContext(ctx context.Context, query string, args ...any) *sql.Row
}
