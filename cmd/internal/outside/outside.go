// Package outside is cornerslip/cmd/outside by its former path, which packages
// outside cmd cannot import.
package outside

import (
	"testing"

	"cornerslip/cmd/outside"
)

// Root, Shared and Program are those of cornerslip/cmd/outside.
func Root(t testing.TB) string                 { t.Helper(); return outside.Root(t) }
func Shared(t testing.TB, name string) string  { t.Helper(); return outside.Shared(t, name) }
func Program(t testing.TB, name string) string { t.Helper(); return outside.Program(t, name) }
