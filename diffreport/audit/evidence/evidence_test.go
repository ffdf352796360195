package evidence_test

import (
	"archive/zip"
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
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
	if err != nil || a.Digest != digest || len(a.Files) != 3 {
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
