//go:build unix

package cli_test

// smallFiles lets no file grow, which looks to a program much like a full disk.
func smallFiles() (full func() []string, room func()) {
	return func() []string { return []string{"sh", "-c", `ulimit -f 0; trap "" XFSZ; exec "$@"`, "sh"} }, func() {}
}
