package register

import (
	"context"
	"database/sql"
	"database/sql/driver"
	"errors"
	"io"
	"net"
	"net/url"
	"strconv"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"
	"github.com/jackc/pgx/v5/stdlib"
)

// serverSchema is where a server's database keeps the register's tables,
// apart from those of others.
const serverSchema = "cornerslip"

// patience is how long a server may take to answer at all.
const patience = 10 * time.Second

func (r *Register) dialServer(ctx context.Context, address string) error {
	r.d = postgres
	if u, err := url.Parse(address); err == nil {
		r.address = u.Redacted()
	} else {
		r.address = "postgres://" // what cannot be read may hold a password
	}
	config, err := pgx.ParseConfig(address)
	if err != nil {
		return r.fault(ErrUnreachable, nil, "this is not an address; write it as postgres://user@host/database")
	}
	if config.RuntimeParams["search_path"] == "" {
		config.RuntimeParams["search_path"] = serverSchema
	}
	config.RuntimeParams["application_name"] = "cornerslip"
	config.RuntimeParams["lock_timeout"] = strconv.FormatInt(r.o.wait().Milliseconds(), 10)
	// Whoever has waited for its turn must see what was done before it.
	config.RuntimeParams["default_transaction_isolation"] = "read committed"
	config.RuntimeParams["client_encoding"] = "UTF8"
	config.RuntimeParams["standard_conforming_strings"] = "on"
	if r.o.ReadOnly {
		config.RuntimeParams["default_transaction_read_only"] = "on"
	} else {
		// A number must not be given out on a promise that is still in memory.
		config.RuntimeParams["synchronous_commit"] = "on"
	}
	if config.ConnectTimeout == 0 {
		config.ConnectTimeout = patience
	}
	r.db = stdlib.OpenDB(*config)
	r.db.SetMaxOpenConns(4)
	r.db.SetMaxIdleConns(4)
	if err := r.db.PingContext(ctx); err != nil {
		r.db.Close()
		return r.wrap(err)
	}
	return nil
}

// readyServer looks whether the database holds a register, and of which
// version.
func (r *Register) readyServer(ctx context.Context) (version int, err error) {
	var text string
	err = r.read(ctx).one([]any{&text}, "SELECT value FROM about WHERE key = 'version' AND EXISTS (SELECT FROM about WHERE key = 'register')")
	var e *pgconn.PgError
	switch {
	case errors.As(err, &e) && (e.Code == "42P01" || e.Code == "42703"), errors.Is(err, sql.ErrNoRows):
		return 0, r.fault(ErrNotRegister, err, "the database holds no register; make one in it, or check the address")
	case err != nil:
		return 0, r.wrap(err)
	}
	if version, err = strconv.Atoi(text); err != nil {
		return 0, r.fault(ErrDamaged, err, "its version %q is no number", text)
	}
	return version, nil
}

func (r *Register) writableServer(ctx context.Context) error {
	var may bool
	var standby, readOnly string
	if err := r.read(ctx).one([]any{&may, &standby, &readOnly},
		"SELECT has_table_privilege('numbers', 'INSERT'), pg_is_in_recovery()::text, current_setting('transaction_read_only')"); err != nil {
		return r.wrap(err)
	}
	switch {
	case standby == "true" || readOnly == "on":
		return r.fault(ErrReadOnly, nil, "the server takes no changes; ask its administrator for the address of the main server")
	case !may:
		return r.fault(ErrReadOnly, nil, "this user may not write to the register; ask the server's administrator")
	}
	return nil
}

// prepareServer makes the schema for a new register.
func (c *change) prepareServer() error {
	var encoding string
	if err := c.one([]any{&encoding}, "SELECT current_setting('server_encoding')"); err != nil {
		return err
	}
	if encoding != "UTF8" {
		return c.r.fault(ErrNotRegister, nil, "the database is encoded in %s; a register needs one in UTF8", encoding)
	}
	var path string
	if err := c.one([]any{&path}, "SELECT current_setting('search_path')"); err != nil {
		return err
	}
	name := pgx.Identifier{path}.Sanitize()
	var there bool
	if err := c.one([]any{&there}, "SELECT EXISTS (SELECT FROM pg_namespace WHERE nspname = ?)", path); err != nil {
		return err
	}
	if there {
		// An empty schema may have been made by the administrator, for us.
		if err := c.one([]any{&there}, "SELECT EXISTS (SELECT FROM pg_class JOIN pg_namespace n ON n.oid = relnamespace WHERE nspname = ?)", path); err != nil {
			return err
		}
		if there {
			return c.r.fault(ErrExists, nil, "the schema %s of this database is not empty; open it, or give another search_path in the address", name)
		}
		return nil
	}
	return c.exec("CREATE SCHEMA " + name)
}

func (r *Register) postgresFault(err error) error {
	var e *pgconn.PgError
	if errors.As(err, &e) {
		switch {
		case e.Code == "55P03" || e.Code == "40P01":
			return r.fault(ErrLocked, err, "another program has been writing to it for longer than %s; wait until it has finished and try again", plain(r.o.wait()))
		case e.Code == "25006" || e.Code == "42501":
			return r.fault(ErrReadOnly, err, "this user or server may not write (%s); ask the server's administrator", e.Message)
		case e.Code == "53100":
			return r.fault(ErrFull, err, "the server's disk is full; nothing was changed; tell its administrator")
		case e.Code == "42P06" || e.Code == "42P07" || e.Code == "23505" && e.SchemaName == "pg_catalog":
			return r.fault(ErrExists, err, "somebody else has just made a register here; open it")
		case e.Code == "3D000":
			return r.fault(ErrMissing, err, "%s; check the address, or have the database made", e.Message)
		case e.Code[:2] == "28" || e.Code[:2] == "57" || e.Code[:2] == "53" || e.Code[:2] == "08":
			return r.fault(ErrUnreachable, err, "the server refuses: %s", e.Message)
		case e.Code == "XX001" || e.Code == "XX002":
			return r.fault(ErrDamaged, err, "the server reports damage: %s", e.Message)
		}
		return nil
	}
	var c *pgconn.ConnectError
	var n net.Error
	lost := errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, driver.ErrBadConn) || errors.Is(err, net.ErrClosed) || pgconn.SafeToRetry(err)
	if errors.As(err, &c) || errors.As(err, &n) || r.d == postgres && lost {
		return r.fault(ErrUnreachable, err, "the server cannot be reached; see whether it runs and whether this computer is on its network")
	}
	return nil
}
