//go:build unix && !linux

package cli_test

func (r *room) smallDisk() (full func() []string, room func()) { return smallFiles() }
