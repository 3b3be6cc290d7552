package accession

import (
	"errors"
	"os"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
)

// Values from publications, named beside each.
var published = []struct {
	scheme         Scheme
	payload, check string
	source         string
}{
	{Mod11_2, "0000-0002-1825-009", "7", "ORCID, structure of the identifier, sample"},
	{Mod11_2, "0000-0002-1694-233", "X", "ORCID, structure of the identifier, sample"},
	{Mod37_36, "A1-2425G-ABC1234002", "M", "GRid standard, sample identifier"},
	{Mod37_2, "G123498654321", "H", "UK transfusion guidelines, annex 2, worked example"},
	{Mod11_2, "0794", "0", "ISO/IEC 7064, sample, from memory"},
	{Mod97_10, "794", "44", "ISO/IEC 7064, sample, from memory"},
	{Mod11_10, "0794", "5", "ISO/IEC 7064, sample, from memory"},
	{Mod97_10, "WEST12345698765432GB", "82", "ISO 13616, the IBAN GB82 WEST 1234 5698 7654 32, from memory"},
}

func TestPublished(t *testing.T) {
	for _, c := range published {
		if got, err := c.scheme.Compute(c.payload); got != c.check || err != nil {
			t.Errorf("%s of %s (%s): %q, %v, want %s", c.scheme, c.payload, c.source, got, err, c.check)
		}
		if !c.scheme.Verify(c.payload + c.check) {
			t.Errorf("%s%s (%s) is not verified by %s", c.payload, c.check, c.source, c.scheme)
		}
	}
}

// Values on which three other programs agree.
func TestReferenceValues(t *testing.T) {
	data, err := os.ReadFile(outside.Shared(t, "checks/check-characters.tsv"))
	if err != nil {
		t.Fatal(err)
	}
	held := 0
	for line := range strings.Lines(string(data)) {
		f := strings.Split(strings.TrimRight(line, "\n"), "\t")
		if strings.HasPrefix(line, "#") || !strings.HasPrefix(f[0], "MOD") {
			continue // the check values of symbologies are symbol's
		}
		s, err := ParseScheme(f[0])
		if err != nil {
			t.Fatal(err)
		}
		held++
		if got, err := s.Compute(f[1]); got != f[2] || err != nil {
			t.Errorf("%s of %s: %q, %v, want %s (%s)", s, f[1], got, err, f[2], f[3])
		}
		if got, want := ReadLine(f[0]+" "+f[1]), "ok\t"+f[1]+f[2]; got != want {
			t.Errorf("ReadLine of %s %s: %q, want %q", f[0], f[1], got, want)
		}
	}
	if held < 50 {
		t.Errorf("only %d values", held)
	}
}

// The congruences that the standard defines the systems by, reckoned the long
// way: for a pure system Σ aᵢ·rⁱ ≡ 1 (mod M) over the whole string, the check
// character last.
func TestPureCongruence(t *testing.T) {
	for scheme, c := range map[Scheme]struct{ mod, radix int }{
		Mod37_2: {37, 2}, Mod11_2: {11, 2}, Mod97_10: {97, 10},
	} {
		for n := range 3000 {
			digits := figures(n*7919%10_000_000, 7)
			check, err := scheme.Compute(digits)
			if err != nil {
				t.Fatal(err)
			}
			sum, weight := 0, 1
			whole := digits + check
			for i := len(whole) - 1; i >= 0; i-- {
				v := strings.IndexByte(alphabet, whole[i])
				if scheme == Mod11_2 && whole[i] == 'X' {
					v = 10
				}
				sum = (sum + v*weight) % c.mod
				weight = weight * c.radix % c.mod
			}
			if sum != 1 {
				t.Fatalf("%s: %s gives %d, not 1", scheme, whole, sum)
			}
		}
	}
}

// What a scheme misses, counted on numbers like the house's: every other
// character in every place, and every two neighbours changed round.
func TestSlipsAreCaught(t *testing.T) {
	for _, c := range []struct {
		scheme         Scheme
		single, change int // missed at most, out of 1,000
		what           string
	}{
		{Mod37_2, 0, 0, "none"},
		{Mod37_36, 0, 5, "a few changed places"},
		{Mod97_10, 0, 0, "none"},
		{Mod11_2, 0, 0, "none"},
		{Mod11_10, 0, 25, "some changed places"},
	} {
		code := "ABC"
		if c.scheme == Mod11_2 || c.scheme == Mod11_10 {
			code = "7"
		}
		single, missedSingle, change, missedChange := 0, 0, 0, 0
		for n := range 300 {
			number := code + figures(n*104729%10_000_000, 7)
			check, err := c.scheme.Compute(number)
			if err != nil {
				t.Fatal(err)
			}
			for i := range number {
				for _, r := range "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ" {
					figure, was := r <= '9', number[i] <= '9'
					if byte(r) == number[i] || figure != was {
						continue // nobody types a letter for a figure and is not told so by the pattern
					}
					single++
					if c.scheme.Verify(number[:i] + string(r) + number[i+1:] + check) {
						missedSingle++
					}
				}
				if i > 0 && number[i] != number[i-1] {
					change++
					if c.scheme.Verify(number[:i-1] + number[i:i+1] + number[i-1:i] + number[i+1:] + check) {
						missedChange++
					}
				}
			}
		}
		t.Logf("%s: missed %d of %d wrong characters and %d of %d changed places", c.scheme, missedSingle, single, missedChange, change)
		if missedSingle*1000 > c.single*single || missedChange*1000 > c.change*change {
			t.Errorf("%s misses more than %s", c.scheme, c.what)
		}
	}
}

func TestMod97HasOneForm(t *testing.T) {
	for n := range 1000 {
		digits := figures(n, 4)
		valid := 0
		for c := range 100 {
			if Mod97_10.Verify(digits + figures(c, 2)) {
				valid++
			}
		}
		if valid != 1 {
			t.Fatalf("%s has %d valid forms", digits, valid)
		}
	}
}

func TestParsePattern(t *testing.T) {
	for _, c := range []struct {
		notation string
		want     Pattern
		err      string
	}{
		{"VDOURA-0000000", Pattern{Code: "VDOURA", Separator: "-", Digits: 7}, ""},
		{" VDOURA0000000 ", Pattern{Code: "VDOURA", Digits: 7}, ""},
		{"VDOURA 000000 MOD 37,36", Pattern{Code: "VDOURA", Separator: " ", Digits: 6, Check: Mod37_36}, ""},
		{"VDOURA-0000000- mod37-2", Pattern{Code: "VDOURA", Separator: "-", Digits: 7, Check: Mod37_2, CheckSeparator: "-"}, ""},
		{"00000000", Pattern{Digits: 8}, ""},
		{"E.00000 MOD 11-2", Pattern{Code: "E", Separator: ".", Digits: 5, Check: Mod11_2}, ""},
		{"HB 12-0000", Pattern{Code: "HB 12", Separator: "-", Digits: 4}, ""},
		{"B10-00", Pattern{Code: "B10", Separator: "-", Digits: 2}, ""},
		{"", Pattern{}, "it has no zeros; write one for each figure"},
		{"VDOURA", Pattern{}, "it has no zeros"},
		{"VDOURA-1234567", Pattern{}, "it has no zeros"},
		{"VD-000X", Pattern{}, `"X" cannot part a number`},
		{"VD-000-", Pattern{}, "needs a check character scheme"},
		{"ÉVORA-000", Pattern{}, `"É" (U+00C9) cannot be barred`},
		{"VD-0000000000000000", Pattern{}, "16 figures: 1 to 15 are possible"},
		{"VD-000 MOD 10", Pattern{}, "there are MOD 37,36, MOD 37-2, MOD 11-2, MOD 11,10 and MOD 97-10"},
		{"V+D-000 MOD 37-2", Pattern{}, `"+" is neither a figure nor a letter`},
	} {
		got, err := ParsePattern(c.notation)
		switch {
		case c.err != "" && (err == nil || !strings.Contains(err.Error(), c.err)):
			t.Errorf("%q: error %v, want %q", c.notation, err, c.err)
		case c.err == "" && (err != nil || got != c.want):
			t.Errorf("%q: %+v, %v", c.notation, got, err)
		case c.err == "":
			if again, err := ParsePattern(got.String()); again != got || err != nil {
				t.Errorf("%q: its notation %q reads as %+v, %v", c.notation, got, again, err)
			}
		}
	}
}

func TestParse(t *testing.T) {
	plain := Pattern{Code: "VDOURA", Separator: "-", Digits: 7}
	checked := Pattern{Code: "VDOURA", Separator: "-", Digits: 7, Check: Mod37_36}
	figuresOnly := Pattern{Code: "E", Digits: 5, Check: Mod11_2, CheckSeparator: "-"}
	twoFigures := Pattern{Code: "VD", Separator: "-", Digits: 4, Check: Mod97_10}
	for _, c := range []struct {
		p    Pattern
		text string
		n    int
		err  error
	}{
		{plain, "VDOURA-0000123", 123, nil},
		{plain, "vdoura 123", 123, nil},
		{plain, "VDOURA0000123", 123, nil},
		{plain, " Vdoura – 000 0123 ", 123, nil},
		{plain, "VDOURA-9999999", 9999999, nil},
		{plain, "VDOURA-0000000", 0, nil},
		{plain, "VDOURA-00000123", 0, ErrFigures},
		{plain, "VDOURA", 0, ErrFigures},
		{plain, "VDOURA-", 0, ErrFigures},
		{plain, "VDOURA-0000123A", 0, ErrForeign},
		{plain, "VDOURO-0000123", 0, ErrForeign},
		{plain, "0000123", 0, ErrForeign},
		{plain, "", 0, ErrForeign},
		{plain, "VDOURA-１２３", 0, ErrForeign},
		{checked, checked.Format(123), 123, nil},
		{checked, strings.ToLower(checked.Format(123)), 123, nil},
		{checked, "VDOURA-0000123", 123, ErrNoCheck},
		{checked, "VDOURA-123", 0, ErrFigures},
		{checked, "VDOURA-0000132" + checked.Format(123)[14:], 0, ErrCheck},
		{figuresOnly, figuresOnly.Format(8), 8, nil},
		{figuresOnly, "E00008", 8, ErrNoCheck},
		{figuresOnly, "E0000800", 0, ErrFigures},
		{twoFigures, twoFigures.Format(17), 17, nil},
		{twoFigures, "VD-0017", 17, ErrNoCheck},
		{twoFigures, "VD-00171", 0, ErrFigures},
	} {
		n, err := c.p.Parse(c.text)
		if n != c.n || !errors.Is(err, c.err) || (err == nil) != (c.err == nil) {
			t.Errorf("%s: %q: %d, %v, want %d, %v", c.p, c.text, n, err, c.n, c.err)
		}
	}
}

// What is written is read, over the whole of a series' figures and all schemes.
func TestFormatParse(t *testing.T) {
	for _, s := range append(Schemes(), None) {
		for _, p := range []Pattern{
			{Code: "VDOURA", Separator: "-", Digits: 7, Check: s},
			{Code: "E", Digits: 4, Check: s},
			{Digits: 5, Check: s},
			{Code: "B10", Separator: " ", Digits: 6, Check: s},
		} {
			if err := p.Valid(); err != nil {
				t.Fatalf("%s: %v", p, err)
			}
			for n := 0; n <= p.Max(); n += 1 + p.Max()/997 {
				text := p.Format(n)
				if got, err := p.Parse(text); got != n || err != nil {
					t.Fatalf("%s: %d is written %s and read %d, %v", p, n, text, got, err)
				}
				if got := p.ReadLine(strings.ToLower(text)); got != "ok\t"+text {
					t.Fatalf("%s: %s is read as %q", p, text, got)
				}
			}
		}
	}
	defer func() {
		if recover() == nil {
			t.Error("a number with a figure too many was written")
		}
	}()
	Pattern{Code: "VD", Digits: 3}.Format(1000)
}

func TestReadLine(t *testing.T) {
	for text, want := range map[string]string{
		"ABC0000001":                  "ok\tABC00000011", // computed, see check-characters.tsv
		"MOD 37-2 ABC0000001":         "ok\tABC0000001*",
		"mod37-36: herb0012345":       "ok\tHERB0012345C",
		"MOD 11-2 0000-0002-1825-009": "ok\t0000-0002-1825-0097",
		"MOD11,10 VD1":                "invalid\t",
		"MOD-0001":                    "ok\tMOD-0001" + must(Mod37_36.Compute("MOD0001")),
		"":                            "invalid\t",
		"Évora 1":                     "invalid\t",
	} {
		if got := ReadLine(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	p := Pattern{Code: "VDOURA", Separator: "-", Digits: 7, Check: Mod37_2}
	whole := p.Format(124)
	for text, want := range map[string]string{
		whole:                         "ok\t" + whole,
		"vdoura 0000124":              "no_check\t" + whole,
		"VDOURA-0000142" + whole[14:]: "wrong_check\t",
		"LISU 124":                    "foreign\t",
		"VDOURA 000000124":            "invalid\t",
	} {
		if got := p.ReadLine(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

func must(s string, err error) string {
	if err != nil {
		panic(err)
	}
	return s
}

func FuzzParse(f *testing.F) {
	f.Add("VDOURA-0000000 MOD 37-2", "VDOURA-0000123X")
	f.Add("E.00000", "e 12")
	f.Fuzz(func(t *testing.T, notation, text string) {
		p, err := ParsePattern(notation)
		if err != nil {
			return
		}
		if again, err := ParsePattern(p.String()); err != nil || again != p {
			t.Fatalf("%q: its notation %q reads as %+v, %v", notation, p, again, err)
		}
		if n, err := p.Parse(text); err == nil {
			if again, err := p.Parse(p.Format(n)); again != n || err != nil {
				t.Fatalf("%s: %q is %d, written %q and then read as %d, %v", p, text, n, p.Format(n), again, err)
			}
		}
	})
}
