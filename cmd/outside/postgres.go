package outside

import (
	"crypto/rand"
	"errors"
	"fmt"
	"net"
	"os"
	"os/exec"
	"os/user"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"
)

// A PostgreSQL server of the test's own.
type server struct {
	bin      string // folder of its programs
	port     int
	password string
	life     *os.File // the server stops when this is closed, at the latest when the process ends
	made     int      // databases
}

var (
	serverOnce sync.Once
	serverLock sync.Mutex
	theServer  *server
	serverErr  error
)

// Postgres returns the postgres:// address of a new, empty database on a
// PostgreSQL server that belongs to the test binary alone: it is started with
// the first call, listens on 127.0.0.1 only, syncs to the disk as a server at
// work does, and is stopped and deleted when the test binary ends, in whatever
// way it ends.
func Postgres(t testing.TB) string {
	t.Helper()
	PostgresProgram(t, "postgres")
	serverOnce.Do(func() {
		for range 3 { // somebody may take the port in between
			if theServer, serverErr = startServer(); serverErr == nil {
				break
			}
		}
	})
	if serverErr != nil {
		t.Fatal(serverErr)
	}
	serverLock.Lock()
	defer serverLock.Unlock()
	s := theServer
	s.made++
	name := "test" + strconv.Itoa(s.made)
	cmd := exec.Command(filepath.Join(s.bin, "createdb"), "--host=127.0.0.1", "--port="+strconv.Itoa(s.port), "--username=tester", name)
	cmd.Env = append(os.Environ(), "PGPASSWORD="+s.password)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("createdb: %v: %s", err, out)
	}
	return fmt.Sprintf("postgres://tester:%s@127.0.0.1:%d/%s", s.password, s.port, name)
}

// PostgresProgram returns the path of a program that comes with PostgreSQL, of
// the newest version that is installed. Debian keeps them out of the PATH.
func PostgresProgram(t testing.TB, name string) string {
	t.Helper()
	dir := serverPrograms()
	path := filepath.Join(dir, name)
	if _, err := os.Stat(path); dir == "" || err != nil {
		skip(t, "PostgreSQL is not installed (no program "+name+")")
	}
	if os.Getuid() == 0 { // a server refuses to run as root
		Program(t, "runuser")
	}
	return path
}

// serverPrograms returns the folder of initdb, "" if there is none.
func serverPrograms() string {
	found, _ := filepath.Glob("/usr/lib/postgresql/*/bin/initdb")
	version := func(path string) float64 {
		v, _ := strconv.ParseFloat(filepath.Base(filepath.Dir(filepath.Dir(path))), 64)
		return v
	}
	if len(found) > 0 {
		return filepath.Dir(slices.MaxFunc(found, func(a, b string) int { return int(10 * (version(a) - version(b))) }))
	}
	if path, err := exec.LookPath("initdb"); err == nil {
		return filepath.Dir(path)
	}
	return ""
}

func startServer() (*server, error) {
	s := &server{bin: serverPrograms(), password: rand.Text()}
	dir, err := os.MkdirTemp("", "postgres-test-")
	if err != nil {
		return nil, err
	}
	fail := func(err error) (*server, error) {
		os.RemoveAll(dir)
		return nil, err
	}
	secret := filepath.Join(dir, "secret")
	if err := os.WriteFile(secret, []byte(s.password+"\n"), 0o600); err != nil {
		return fail(err)
	}
	// A server refuses to run as root; Debian's package makes a user for it.
	var as []string
	if os.Getuid() == 0 {
		who, err := user.Lookup("postgres")
		if err != nil {
			return fail(fmt.Errorf("the server cannot be run as root: %w", err))
		}
		uid, _ := strconv.Atoi(who.Uid)
		gid, _ := strconv.Atoi(who.Gid)
		if err := errors.Join(os.Chown(dir, uid, gid), os.Chown(secret, uid, gid)); err != nil {
			return fail(err)
		}
		as = []string{"runuser", "-u", "postgres", "--"}
	}
	command := func(args ...string) *exec.Cmd {
		args = append(as[:len(as):len(as)], args...)
		cmd := exec.Command(args[0], args[1:]...)
		cmd.Dir = dir
		return cmd
	}
	data := filepath.Join(dir, "data")
	if out, err := command(filepath.Join(s.bin, "initdb"), "--pgdata="+data, "--username=tester", "--pwfile="+secret,
		"--auth=scram-sha-256", "--encoding=UTF8", "--locale=C", "--no-sync").CombinedOutput(); err != nil {
		return fail(fmt.Errorf("initdb: %w: %s", err, out))
	}
	if err := s.run(command, dir, data); err != nil {
		return fail(err)
	}
	return s, nil
}

// run starts the server on a free port and waits until it answers.
func (s *server) run(command func(...string) *exec.Cmd, dir, data string) error {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return err
	}
	s.port = l.Addr().(*net.TCPAddr).Port
	l.Close()
	read, write, err := os.Pipe()
	if err != nil {
		return err
	}
	defer read.Close()
	log := filepath.Join(dir, "log")
	// The shell outlives the test binary by as long as the server needs to
	// stop: it reads its input, which ends with the binary.
	const script = `"$1" -D "$2" -p "$3" -c listen_addresses=127.0.0.1 -c unix_socket_directories= -c max_connections=100 >"$4" 2>&1 </dev/null & ` +
		`server=$!; cat >/dev/null; kill -INT $server; wait $server; cd /; rm -rf "$5"/*; rmdir "$5" 2>/dev/null`
	cmd := command("sh", "-c", script, "sh", filepath.Join(s.bin, "postgres"), data, strconv.Itoa(s.port), log, dir)
	cmd.Stdin = read
	if err := cmd.Start(); err != nil {
		write.Close()
		return err
	}
	go cmd.Wait()
	for range 1200 { // a busy machine takes its time
		ready := exec.Command(filepath.Join(s.bin, "pg_isready"), "--quiet", "--host=127.0.0.1", "--port="+strconv.Itoa(s.port))
		if ready.Run() == nil {
			s.life = write
			return nil
		}
		time.Sleep(50 * time.Millisecond)
		text, _ := os.ReadFile(log)
		// Being asked too early is fatal to the question alone.
		if strings.Contains(strings.ReplaceAll(string(text), "FATAL:  the database system is starting up", ""), "FATAL") {
			break
		}
	}
	write.Close()
	text, _ := os.ReadFile(log)
	return fmt.Errorf("the PostgreSQL server did not start: %s", text)
}
