package register

import (
	"context"
	"embed"
	"strconv"
)

//go:embed schema
var schemaFiles embed.FS

// schemas returns what makes a register: the first text makes version 1, each
// further one turns the version before into its own.
func schemas(d dialect) []string {
	kind := map[dialect]string{sqlite: "sqlite", postgres: "postgres"}[d]
	var texts []string
	for v := 1; ; v++ {
		text, err := schemaFiles.ReadFile("schema/" + strconv.Itoa(v) + "." + kind + ".sql")
		if err != nil {
			return texts
		}
		texts = append(texts, string(text))
	}
}

// build makes an empty register.
func (r *Register) build(ctx context.Context, at At, steps []string) error {
	r.version = len(steps)
	if r.d == sqlite {
		mode := "wal"
		if r.o.Network {
			mode = "delete"
		}
		if err := r.journal(ctx, mode); err != nil {
			return err
		}
	}
	tx, end, err := r.begin(ctx)
	if err != nil {
		return r.wrap(err)
	}
	defer end()
	c := &change{session: session{ctx, r, tx}, tx: tx, at: at, next: map[string]int64{}}
	if r.d == postgres {
		if err := c.prepareServer(); err != nil {
			return r.wrap(err)
		}
	}
	for _, step := range steps {
		if err := c.exec(step); err != nil {
			return r.wrap(err)
		}
	}
	if err := c.insert("about", "key, value", [][]any{{"register", "cornerslip"}, {"version", strconv.Itoa(r.version)}}); err != nil {
		return r.wrap(err)
	}
	if err := c.mark(); err != nil {
		return r.wrap(err)
	}
	if _, err := c.event(event{what: Created}); err != nil {
		return r.wrap(err)
	}
	return r.uncertain(r.wrap(tx.Commit()))
}

// mark writes the version where SQLite's own tools show it.
func (c *change) mark() error {
	if c.r.d != sqlite {
		return nil
	}
	if err := c.exec("PRAGMA application_id = " + strconv.Itoa(applicationID)); err != nil {
		return err
	}
	return c.exec("PRAGMA user_version = " + strconv.Itoa(c.r.version))
}

// ready looks at what was dialled, and brings it up to this program's version
// if it may.
func (r *Register) ready(ctx context.Context, steps []string) error {
	look, writable := r.readyFile, r.writableFile
	if r.d == postgres {
		look, writable = r.readyServer, r.writableServer
	}
	version, err := look(ctx)
	if err != nil {
		return err
	}
	r.version = version
	switch {
	case version > len(steps):
		return r.fault(ErrNewer, nil, "it is of version %d and this program knows versions up to %d; install the newer program", version, len(steps))
	case version < 1:
		return r.fault(ErrDamaged, nil, "it has no version; restore the last backup")
	case version == len(steps):
	case r.o.ReadOnly || r.o.Upgrade == (At{}):
		return r.fault(ErrOlder, nil, "it is of version %d and this program writes version %d; bring it up to date once, after which older programs cannot open it", version, len(steps))
	}
	if r.o.ReadOnly {
		return nil
	}
	if err := writable(ctx); err != nil {
		return err
	}
	if version < len(steps) {
		if err := r.upgrade(ctx, steps); err != nil {
			return err
		}
	}
	if r.d == sqlite && r.o.Network {
		return r.journal(ctx, "delete")
	}
	return nil
}

// upgrade brings the register to the last version, all or nothing.
func (r *Register) upgrade(ctx context.Context, steps []string) error {
	from := r.version
	if r.d == sqlite {
		if err := r.copyTo(ctx, r.path+".version-"+strconv.Itoa(from), true); err != nil {
			return err
		}
	}
	return r.write(ctx, r.o.Upgrade, func(c *change) error {
		for _, step := range steps[from:] {
			if err := c.exec(step); err != nil {
				return err
			}
		}
		r.version = len(steps)
		if err := c.exec("UPDATE about SET value = ? WHERE key = 'version'", strconv.Itoa(r.version)); err != nil {
			return err
		}
		if err := c.mark(); err != nil {
			return err
		}
		c.at.Why = "from version " + strconv.Itoa(from) + " to " + strconv.Itoa(r.version)
		_, err := c.event(event{what: Upgraded})
		return err
	})
}
