package main

import (
	"bytes"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/cobra"

	"cornerslip/cmd/outside"
)

// said runs the command with somebody at the keyboard and returns all it shows.
func said(t *testing.T, answers string, args ...string) (string, error) {
	t.Helper()
	var out bytes.Buffer
	a := &app{stdin: strings.NewReader(answers), stdout: &out, stderr: &out, asks: true}
	root := a.root()
	root.SetArgs(append(args, "--by", "M. Teixeira", "--date", "2026-11-25"))
	err := root.Execute()
	return out.String(), err
}

// TestAsksBefore: what cannot be undone is asked about where somebody can
// answer, and left as it was unless the answer is yes.
func TestAsksBefore(t *testing.T) {
	book := "--register=" + filepath.Join(t.TempDir(), "herbarium.db")
	must := func(answers string, args ...string) string {
		t.Helper()
		out, err := said(t, answers, append(args, book)...)
		if err != nil {
			t.Fatalf("%v: %v\n%s", args, err, out)
		}
		return out
	}
	must("", "register", "open", "--series", "VDOURA-0000000")
	must("", "register", "issue", "--count", "20")
	for _, answer := range []string{"", "n\n", "\n", "what\n"} {
		out := must(answer, "register", "void", "VDOURA-0000001..3", "--why", "torn")
		if !strings.Contains(out, "make 3 numbers void: VDOURA-0000001 to VDOURA-0000003? [y/N]") || !strings.Contains(out, "left as it was") {
			t.Errorf("%q: %s", answer, out)
		}
		if out := must(answer, "register", "up", "VDOURA-0000090", "--why", "restored"); !strings.Contains(out, "70 numbers will never be issued; go on? [y/N]") || !strings.Contains(out, "left as it was") {
			t.Errorf("%q: %s", answer, out)
		}
	}
	if out := must("", "register", "series"); !strings.Contains(out, "20 issued") || !strings.Contains(out, "the next number is VDOURA-0000021") {
		t.Error(out)
	}
	must("yes\n", "register", "void", "VDOURA-0000001..3", "--why", "torn")
	must("", "register", "void", "VDOURA-0000004", "--why", "torn") // a single one is what was typed
	must("Y\n", "register", "up", "VDOURA-0000090", "--why", "restored")
	if out := must("", "register", "series"); !strings.Contains(out, "4 void") || !strings.Contains(out, "70 unknown") || !strings.Contains(out, "the next number is VDOURA-0000091") {
		t.Error(out)
	}
}

// TestRegisterOnServer goes the usual way with a register on a server.
func TestRegisterOnServer(t *testing.T) {
	address := outside.Postgres(t)
	server, err := url.Parse(address)
	if err != nil {
		t.Fatal(err)
	}
	password, _ := server.User.Password()
	book := "--register=" + address
	dir := t.TempDir()
	trip, numbered := filepath.Join(dir, "trip.csv"), filepath.Join(dir, "numbered.csv")
	if err := os.WriteFile(trip, []byte("recordedBy,recordNumber,eventDate,scientificName,country\nI. Almeida,214,2026-06-14,Genista florida L.,Portugal\nI. Almeida,215,2026-06-14,Genista florida L.,Portugal\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, step := range []struct{ args, want string }{
		{"register list", "the database holds no register; make one in it"},
		{"register open --series VDOURA-0000000", "made the register postgres://"},
		{"register issue " + trip + " -o " + numbered, "issued 2 numbers: VDOURA-0000001 to VDOURA-0000002"},
		{"register issue " + trip + " -o " + numbered + " --force", "no new number was needed"},
		{"register issue --count 3", "VDOURA-0000003 to VDOURA-0000005"},
		{"register void VDOURA-0000003 --why torn", "void now"},
		{"register import " + numbered, "not taken over"}, // issued here, attached there
		{"register find Almeida 215", "VDOURA-0000002"},
		{"attach " + numbered, "attached 1 of 2 sheets"},
		{"register list --state attached", "I. Almeida 214"},
		{"register series", "3 issued, 1 attached, 1 void"},
		{"register history VDOURA-0000001", "attached"},
		{"register check", "nothing wrong"},
		{"register backup copy.db", "pg_dump"},
	} {
		out, err := said(t, "Almeida 214\nVDOURA-0000001\ndone\n", append(strings.Fields(step.args), book)...)
		if err != nil {
			out += err.Error()
		}
		if !strings.Contains(out, step.want) {
			t.Errorf("%s: %s", step.args, out)
		}
		if password == "" || strings.Contains(out, password) {
			t.Errorf("%s shows the server's password: %s", step.args, out)
		}
	}
}

// TestRegisterHelp: every command says what it does and shows how.
func TestRegisterHelp(t *testing.T) {
	a := &app{}
	var look func(c *cobra.Command)
	look = func(c *cobra.Command) {
		if c.Long == "" || c.Short == "" || !strings.Contains(c.Example, c.CommandPath()[strings.Index(c.CommandPath()+" ", " ")+1:]) {
			t.Errorf("%s lacks a text or an example", c.CommandPath())
		}
		for _, line := range strings.Split(c.Long, "\n") {
			if len([]rune(line)) > 100 {
				t.Errorf("%s: a line of %d letters: %s", c.CommandPath(), len([]rune(line)), line)
			}
		}
		for _, sub := range c.Commands() {
			look(sub)
		}
	}
	root := a.root()
	for _, name := range []string{"register", "attach"} {
		c, _, err := root.Find([]string{name})
		if err != nil {
			t.Fatal(err)
		}
		look(c)
	}
}
