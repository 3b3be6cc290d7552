package name

import (
	"os"
	"strings"
	"testing"

	"cornerslip/label"
)

// marked reads a file of names with their italics marked: a name a line, and
// behind a bar where it comes from.
func marked(t testing.TB, file string) []string {
	t.Helper()
	src, err := os.ReadFile("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, line := range strings.Split(string(src), "\n") {
		want, source, _ := strings.Cut(line, " | ")
		if strings.TrimSpace(want) == "" || line[0] == '#' || source == "skip" {
			continue
		}
		names = append(names, want)
	}
	return names
}

var unmark = strings.NewReplacer("<i>", "", "</i>", "")

func TestOwnTables(t *testing.T) {
	for _, file := range []string{"code.txt", "forms.txt"} {
		for _, want := range marked(t, file) {
			text := unmark.Replace(want)
			if got := Markup(text, Options{}); got != want {
				t.Errorf("%s\n got  %s\n want %s", text, got, want)
			}
			if s := label.String(Runs(text, Parts{}, Options{})); s != text {
				t.Errorf("runs of %q join to %q", text, s)
			}
		}
	}
}
