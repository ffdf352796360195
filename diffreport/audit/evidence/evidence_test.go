package evidence_test

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"homerun/diffreport/audit/evidence"
)

func files() []evidence.File {
	return []evidence.File{
		{evidence.About, []byte("{}\n")},
		{evidence.Records + "plant.hcl", []byte("plant \"mole-end\" {}\n")},
		{evidence.Records + "runs/level-1.hcl", []byte("run \"1A-A01\" {}\n")},
	}
}

func packed(t *testing.T) ([]byte, string) {
	t.Helper()
	var out bytes.Buffer
	digest, err := evidence.Pack(&out, files(), time.Date(2026, 3, 2, 0, 0, 0, 0, time.UTC))
	if err != nil {
		t.Fatal(err)
	}
	return out.Bytes(), digest
}

func open(data []byte) (*evidence.Archive, error) {
	return evidence.Open(bytes.NewReader(data), int64(len(data)))
}

func TestTheListIsReadBySha256sum(t *testing.T) {
	t.Parallel()
	data, digest := packed(t)
	a, err := open(data)
	if err != nil || a.Digest != digest || len(a.Names) != 3 {
		t.Fatalf("%+v %v", a, err)
	}
	program, err := exec.LookPath("sha256sum")
	if err != nil {
		t.Skip("sha256sum is not installed")
	}
	dir := t.TempDir()
	in, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.CopyFS(dir, in); err != nil {
		t.Fatal(err)
	}
	check := exec.CommandContext(t.Context(), program, "--check", "--strict", evidence.Sums)
	check.Dir = dir
	if said, err := check.CombinedOutput(); err != nil {
		t.Errorf("sha256sum: %v\n%s", err, said)
	}
	if err := os.WriteFile(filepath.Join(dir, "records", "plant.hcl"), []byte("plant \"mole-end\" { }\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	again := exec.CommandContext(t.Context(), program, "--check", "--strict", evidence.Sums)
	again.Dir = dir
	if said, err := again.CombinedOutput(); err == nil || !strings.Contains(string(said), "records/plant.hcl: FAILED") {
		t.Errorf("sha256sum of a changed file: %v\n%s", err, said)
	}
}

// rewrite packs the files of an archive again, with some of them altered. A nil
// content drops the file.
func rewrite(t *testing.T, data []byte, alter func(name string, content []byte) (string, []byte)) []byte {
	t.Helper()
	in, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	to := zip.NewWriter(&out)
	for _, f := range in.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		var content bytes.Buffer
		if _, failed := content.ReadFrom(r); failed != nil {
			t.Fatal(failed)
		}
		name, changed := alter(f.Name, content.Bytes())
		if changed == nil {
			continue
		}
		w, err := to.Create(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write(changed); err != nil {
			t.Fatal(err)
		}
	}
	if err := to.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func TestWhatWasTamperedWithIsNamed(t *testing.T) {
	t.Parallel()
	data, _ := packed(t)
	for name, c := range map[string]struct {
		alter func(string, []byte) (string, []byte)
		want  string
	}{
		"another byte": {func(n string, b []byte) (string, []byte) {
			return n, bytes.ReplaceAll(b, []byte("1A-A01"), []byte("1A-A02"))
		}, "records/runs/level-1.hcl: its SHA-256 is "},
		"a file left out": {func(n string, b []byte) (string, []byte) {
			if n == evidence.About {
				return n, nil
			}
			return n, b
		}, "about.json: the archive does not hold it"},
		"a file renamed": {func(n string, b []byte) (string, []byte) {
			return strings.Replace(n, "level-1", "level-2", 1), b
		}, "records/runs/level-1.hcl: the archive does not hold it"},
		"a line left out": {func(n string, b []byte) (string, []byte) {
			if n == evidence.Sums {
				return n, b[bytes.IndexByte(b, '\n')+1:]
			}
			return n, b
		}, "about.json: the list does not name it"},
		"a way out": {func(n string, b []byte) (string, []byte) {
			return strings.Replace(n, "records/plant", "../plant", 1), b
		}, "../plant.hcl: the name leads out of the archive"},
		"no list": {func(n string, b []byte) (string, []byte) {
			if n == evidence.Sums {
				return n, nil
			}
			return n, b
		}, "SHA256SUMS: the archive does not hold it"},
		"a file twice": {func(n string, b []byte) (string, []byte) {
			return strings.Replace(n, "records/plant.hcl", "about.json", 1), b
		}, "about.json: the archive holds it twice"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			_, err := open(rewrite(t, data, c.alter))
			var flaw *evidence.FlawError
			if !errors.As(err, &flaw) || !strings.HasPrefix(err.Error(), c.want) {
				t.Errorf("got %v, want %s", err, c.want)
			}
		})
	}
	if _, err := open(data[:len(data)/2]); err == nil {
		t.Error("half an archive is taken for a whole one")
	}
}

// made is an archive of any entries, well formed or not.
func made(t *testing.T, entries func(w *zip.Writer)) []byte {
	t.Helper()
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	entries(w)
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func entry(t *testing.T, w *zip.Writer, h *zip.FileHeader, content []byte) {
	t.Helper()
	into, err := w.CreateHeader(h)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := into.Write(content); err != nil {
		t.Fatal(err)
	}
}

// raw is an entry that says something else about its size than is true.
func raw(t *testing.T, w *zip.Writer, name string, packed []byte, unpacked uint64) {
	t.Helper()
	into, err := w.CreateRaw(&zip.FileHeader{Name: name, Method: zip.Deflate, CompressedSize64: uint64(len(packed)), UncompressedSize64: unpacked})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := into.Write(packed); err != nil {
		t.Fatal(err)
	}
}

// deflated is so many zeros, packed.
func deflated(t *testing.T, size int) []byte {
	t.Helper()
	var out bytes.Buffer
	w, err := flate.NewWriter(&out, flate.BestCompression)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := w.Write(make([]byte, size)); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// TestHostileArchives holds that what is made to harm is refused, by name, for what
// it says and for what it is.
func TestHostileArchives(t *testing.T) {
	t.Parallel()
	link := &zip.FileHeader{Name: "records/plant.hcl"}
	link.SetMode(fs.ModeSymlink | 0o777)
	bomb := deflated(t, 8<<20)
	list := func(w *zip.Writer, name string) {
		entry(t, w, &zip.FileHeader{Name: evidence.Sums}, fmt.Appendf(nil, "%064d  %s\n", 0, name))
	}
	for name, c := range map[string]struct {
		entries func(w *zip.Writer)
		want    string
	}{
		"a link":           {func(w *zip.Writer) { entry(t, w, link, []byte("/etc/hosts")) }, "records/plant.hcl: it is no plain file"},
		"a folder":         {func(w *zip.Writer) { entry(t, w, &zip.FileHeader{Name: "records/"}, nil) }, "records/: the name leads out of the archive"},
		"the root":         {func(w *zip.Writer) { entry(t, w, &zip.FileHeader{Name: "/etc/hosts"}, nil) }, "/etc/hosts: the name leads out of the archive"},
		"another system's": {func(w *zip.Writer) { entry(t, w, &zip.FileHeader{Name: `..\x`}, nil) }, `..\x: the name holds what a list of digests can not`},
		"a line's end":     {func(w *zip.Writer) { entry(t, w, &zip.FileHeader{Name: "a\nb"}, nil) }, "a\nb: the name holds what a list of digests can not"},
		"huge, as it says": {func(w *zip.Writer) { raw(t, w, "big", bomb, 1<<40) }, "big: with it the archive unpacks to more than 1073741824 bytes"},
		"huge in parts": {func(w *zip.Writer) {
			for i := range 200 {
				raw(t, w, fmt.Sprint("big", i), bomb[:10], 8<<20)
			}
		}, "big128: with it the archive unpacks to more than"},
		"huger than it says": {func(w *zip.Writer) { list(w, "big"); raw(t, w, "big", bomb, 10) }, "big: it can not be unpacked"},
		"a huge list":        {func(w *zip.Writer) { raw(t, w, evidence.Sums, bomb, 33<<20) }, "SHA256SUMS: it is of 34603008 bytes, more than"},
		"no digest":          {func(w *zip.Writer) { entry(t, w, &zip.FileHeader{Name: evidence.Sums}, []byte("12  a\n")) }, "SHA256SUMS: a line of it is no digest and name"},
		"the list in itself": {func(w *zip.Writer) { list(w, evidence.Sums) }, "SHA256SUMS: its SHA-256 is "},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			_, err := open(made(t, c.entries))
			var flaw *evidence.FlawError
			if !errors.As(err, &flaw) || !strings.HasPrefix(err.Error(), c.want) {
				t.Errorf("got %v, want %s", err, c.want)
			}
		})
	}
}

// TestOpeningABombCostsLittle unpacks an archive of 64 MB, and asks how much
// memory that took.
func TestOpeningABombCostsLittle(t *testing.T) {
	var before, after runtime.MemStats
	bomb := deflated(t, 64<<20)
	data := made(t, func(w *zip.Writer) {
		entry(t, w, &zip.FileHeader{Name: evidence.Sums}, fmt.Appendf(nil, "%064d  big\n", 0))
		into, err := w.CreateRaw(&zip.FileHeader{Name: "big", Method: zip.Deflate, CompressedSize64: uint64(len(bomb)), UncompressedSize64: 64 << 20})
		if err != nil {
			t.Fatal(err)
		}
		if _, err := into.Write(bomb); err != nil {
			t.Fatal(err)
		}
	})
	runtime.ReadMemStats(&before)
	if _, err := open(data); err == nil {
		t.Error("the digest does not hold, and nobody says so")
	}
	runtime.ReadMemStats(&after)
	if grown := after.TotalAlloc - before.TotalAlloc; grown > 4<<20 {
		t.Errorf("opening took %d bytes of memory", grown)
	}
}

func TestNoArchiveIsWrittenThatNobodyOpens(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"../x", "records/a\nb.hcl", `records\a.hcl`, "", "records/\xff.hcl"} {
		var out bytes.Buffer
		if _, err := evidence.Pack(&out, []evidence.File{{name, nil}}, time.Unix(0, 0)); err == nil {
			t.Errorf("%q is packed", name)
		}
	}
}

func FuzzOpen(f *testing.F) {
	var out bytes.Buffer
	if _, err := evidence.Pack(&out, files(), time.Unix(0, 0)); err != nil {
		f.Fatal(err)
	}
	f.Add(out.Bytes())
	f.Fuzz(func(t *testing.T, data []byte) {
		a, err := open(data)
		if (a == nil) == (err == nil) {
			t.Errorf("%v %v", a, err)
		}
	})
}
