//go:build !unix

package register

import "os"

// mayWrite reports whether a file is not marked as read-only.
func mayWrite(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.Mode().Perm()&0o200 != 0
}
