package trail

import (
	"bytes"
	"crypto/sha256"
	"io"
	"os"
	"path/filepath"
)

// registerFile is the name of a kept register. One of another form is made anew in its place.
const registerFile = "history"

// registerHead begins the file, so that people who find it know what it is.
const registerHead = "homerun: where labels stand in the history; made anew when it is removed\n3\n"

// mostKept bounds a kept register, in bytes.
const mostKept = 512 << 20

// load reads the register kept in a folder. One that is not there, is damaged or
// is of another form is an empty one: all of it can be read from git again.
func load(folder string) *register {
	if folder == "" {
		return newRegister()
	}
	f, err := os.Open(filepath.Join(folder, registerFile))
	if err != nil {
		return newRegister()
	}
	defer func() { _ = f.Close() }()
	var read bytes.Buffer
	if info, bad := f.Stat(); bad == nil && info.Size() <= mostKept {
		read.Grow(int(info.Size()) + bytes.MinRead)
	}
	_, err = read.ReadFrom(io.LimitReader(f, mostKept+1))
	data := read.Bytes()
	if err != nil || len(data) > mostKept || len(data) < len(registerHead)+sha256.Size {
		return newRegister()
	}
	body, sum := data[:len(data)-sha256.Size], data[len(data)-sha256.Size:]
	if got := sha256.Sum256(body); !bytes.Equal(got[:], sum) || !bytes.HasPrefix(body, []byte(registerHead)) {
		return newRegister()
	}
	d := newDecoder(body[len(registerHead):])
	r := d.register()
	if d.failed || len(d.rest) > 0 {
		return newRegister()
	}
	return r
}

// keep writes the register to a folder, whole or not at all. Where it can not,
// nothing is lost but time.
func keep(folder string, r *register) {
	if os.MkdirAll(folder, 0o755) != nil {
		return
	}
	f, err := os.CreateTemp(folder, registerFile+"-*")
	if err != nil {
		return
	}
	body := r.encode()
	sum := sha256.Sum256(body)
	_, err = f.Write(append(body, sum[:]...))
	if closed := f.Close(); err != nil || closed != nil || os.Rename(f.Name(), filepath.Join(folder, registerFile)) != nil {
		_ = os.Remove(f.Name()) // it would only lie there
	}
}
