package register

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"
)

// A dialect is one of the two databases.
type dialect int

const (
	sqlite dialect = iota
	postgres
)

// bind turns question marks into the database's own placeholders. Queries hold
// no other question mark.
func (d dialect) bind(query string) string {
	if d == sqlite {
		return query
	}
	var b strings.Builder
	n := 0
	for {
		before, rest, ok := strings.Cut(query, "?")
		b.WriteString(before)
		if !ok {
			return b.String()
		}
		n++
		b.WriteByte('$')
		b.WriteString(strconv.Itoa(n))
		query = rest
	}
}

// A session asks the database, within a transaction or without one.
type session struct {
	ctx context.Context
	r   *Register
	db  interface {
		ExecContext(context.Context, string, ...any) (sql.Result, error)
		QueryContext(context.Context, string, ...any) (*sql.Rows, error)
	}
}

func (r *Register) read(ctx context.Context) *session { return &session{ctx, r, r.db} }

func (s *session) exec(query string, args ...any) error {
	if err := keepable(args); err != nil {
		return err
	}
	return s.patient(func() error {
		_, err := s.db.ExecContext(s.ctx, s.r.d.bind(query), args...)
		return err
	})
}

// patient repeats f while others hold the lock it needs; within a transaction
// there is nothing to wait for.
func (s *session) patient(f func() error) error {
	if _, free := s.db.(*sql.DB); !free || s.r.d != sqlite {
		return f()
	}
	return s.r.patient(s.ctx, f)
}

func (s *session) rows(query string, args ...any) (*sql.Rows, error) {
	if err := keepable(args); err != nil {
		return nil, err
	}
	var rows *sql.Rows
	err := s.patient(func() (err error) {
		rows, err = s.db.QueryContext(s.ctx, s.r.d.bind(query), args...)
		return err
	})
	return rows, err
}

// each calls f for every row of the answer.
func (s *session) each(f func(scan func(...any) error) error, query string, args ...any) error {
	rows, err := s.rows(query, args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		if err := f(rows.Scan); err != nil {
			return err
		}
	}
	return rows.Err()
}

// one scans the only row of the answer, or returns sql.ErrNoRows.
func (s *session) one(dest []any, query string, args ...any) error {
	found := false
	err := s.each(func(scan func(...any) error) error { found = true; return scan(dest...) }, query, args...)
	if err == nil && !found {
		err = sql.ErrNoRows
	}
	return err
}

// A change is a transaction that writes. Only one is at work in a register at
// any time.
type change struct {
	session
	tx       *sql.Tx
	at       At
	next     map[string]int64
	prepared map[string]*sql.Stmt
}

// write runs f in a transaction and commits it.
func (r *Register) write(ctx context.Context, at At, f func(c *change) error) error {
	if err := at.valid(); err != nil {
		return err
	}
	if r.o.ReadOnly {
		return r.fault(ErrReadOnly, nil, "it was opened for looking only")
	}
	tx, end, err := r.begin(ctx)
	if err != nil {
		return r.wrap(err)
	}
	defer end()
	c := &change{session: session{ctx, r, tx}, tx: tx, at: at, next: map[string]int64{}, prepared: map[string]*sql.Stmt{}}
	if err := c.begin(); err != nil {
		return r.wrap(err)
	}
	if err := f(c); err != nil {
		return r.wrap(err)
	}
	if err := tx.Commit(); err != nil {
		return r.uncertain(r.wrap(err))
	}
	return nil
}

// begin begins a transaction that writes; end must be called whatever becomes
// of it. With SQLite it waits here for its turn.
func (r *Register) begin(ctx context.Context) (tx *sql.Tx, end func(), err error) {
	if r.d == sqlite {
		return r.beginFile(ctx)
	}
	tx, err = r.db.BeginTx(ctx, nil)
	return tx, func() { tx.Rollback() }, err
}

// begin waits for this writer's turn and makes sure that nobody has changed
// the register's form since it was opened.
func (c *change) begin() error {
	query := "SELECT value FROM about WHERE key = 'version'"
	if c.r.d == postgres {
		query += " FOR UPDATE"
	}
	var version string
	if err := c.one([]any{&version}, query); err != nil {
		return err
	}
	if version != strconv.Itoa(c.r.version) {
		return c.r.fault(ErrNewer, nil, "another program has just brought it to version %s; start again", version)
	}
	return nil
}

// id returns the next free id of a table: there is no other writer.
func (c *change) id(table string) (int64, error) {
	if _, ok := c.next[table]; !ok {
		var last sql.NullInt64
		if err := c.one([]any{&last}, "SELECT MAX(id) FROM "+table); err != nil {
			return 0, err
		}
		c.next[table] = last.Int64
	}
	c.next[table]++
	return c.next[table], nil
}

// insert adds rows, many with each statement.
func (c *change) insert(table, columns string, rows [][]any) error {
	const most = 64 // rows a statement; more gain nothing
	for len(rows) > 0 {
		part := rows[:min(most, len(rows))]
		rows = rows[len(part):]
		args := make([]any, 0, len(part)*len(part[0]))
		for _, row := range part {
			args = append(args, row...)
		}
		if err := keepable(args); err != nil {
			return err
		}
		one := "(" + strings.Repeat("?, ", len(part[0])-1) + "?)"
		query := "INSERT INTO " + table + " (" + columns + ") VALUES " + strings.Repeat(one+", ", len(part)-1) + one
		if len(part) < most { // not worth keeping
			if err := c.exec(query, args...); err != nil {
				return err
			}
			continue
		}
		stmt := c.prepared[table]
		if stmt == nil {
			var err error
			if stmt, err = c.tx.PrepareContext(c.ctx, c.r.d.bind(query)); err != nil {
				return err
			}
			c.prepared[table] = stmt // closed with the transaction
		}
		if _, err := stmt.ExecContext(c.ctx, args...); err != nil {
			return err
		}
	}
	return nil
}

// chunks calls f with list cut into pieces that fit into one query.
func chunks[T any](list []T, f func([]T) error) error {
	for len(list) > 0 {
		n := min(500, len(list))
		if err := f(list[:n]); err != nil {
			return err
		}
		list = list[n:]
	}
	return nil
}

// marks returns "?, ?, ?" for a query and its arguments.
func marks(keys []string) (string, []any) {
	args := make([]any, len(keys))
	for i, k := range keys {
		args[i] = k
	}
	return strings.TrimSuffix(strings.Repeat("?, ", len(keys)), ", "), args
}

// integers writes whole numbers for a query.
func integers[T int | int64](list []T) string {
	b := make([]byte, 0, 8*len(list))
	for i, n := range list {
		if i > 0 {
			b = append(b, ',')
		}
		b = strconv.AppendInt(b, int64(n), 10)
	}
	return string(b)
}

func parseStamp(s string) (time.Time, error) {
	t, err := time.Parse(stampLayout, s)
	if err != nil {
		return t, fmt.Errorf("time %q in the register: %w", s, ErrDamaged)
	}
	return t, nil
}

// wrap says in plain words what the database reports.
func (r *Register) wrap(err error) error {
	var f *fault
	switch {
	case err == nil || errors.As(err, &f):
		return err
	case errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded):
		return err
	}
	if told := r.sqliteFault(err); told != nil {
		return told
	}
	if told := r.postgresFault(err); told != nil {
		return told
	}
	return fmt.Errorf("register %s: %w", r.address, err)
}

// uncertain adds, to an error of a commit whose answer was lost, that the
// change may have been made.
func (r *Register) uncertain(err error) error {
	if r.d == sqlite || !errors.Is(err, ErrUnreachable) {
		return err
	}
	return r.fault(ErrUnreachable, err, "the server did not answer whether the change was made; look at the history before you repeat it")
}
