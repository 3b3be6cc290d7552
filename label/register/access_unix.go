//go:build unix

package register

import "syscall"

// mayWrite reports whether the system lets this program write to a file. The
// file is not opened for it: closing it again would give up SQLite's locks.
func mayWrite(path string) bool {
	const write = 2 // W_OK
	return syscall.Access(path, write) == nil
}
