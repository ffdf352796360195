package vcs_test

import (
	"sync"
	"testing"

	"homerun/schema/vcs"
)

// TestTogether reads from many goroutines at once, which must neither mix answers nor wait for each other for ever.
func TestTogether(t *testing.T) {
	t.Parallel()
	r := plant(t)
	want := map[string]string{}
	for _, rev := range []string{"HEAD:plant.hcl", "HEAD:floor/1.hcl", "HEAD~1:floor/2.hcl", ":floor/3.hcl"} {
		id := r.ask("rev-parse", rev)
		want[id] = r.git("cat-file", "blob", id)
	}
	for _, reader := range []vcs.Reader{vcs.ReaderAuto, vcs.ReaderGoGit, vcs.ReaderGit} {
		opened := r.open(reader)
		var group sync.WaitGroup
		for range 4 {
			group.Go(func() {
				for id, text := range want {
					for b, err := range opened.Blobs(t.Context(), []string{id, id}) {
						one, oneErr := opened.Blob(t.Context(), id)
						if string(b.Data) != text || string(one) != text || err != nil || oneErr != nil {
							t.Errorf("%v: %s: got %q, %v and %q, %v, want %q", reader, id, b.Data, err, one, oneErr, text)
						}
					}
					if _, err := opened.Index(t.Context()); err != nil {
						t.Errorf("%v: index: %v", reader, err)
					}
				}
			})
		}
		group.Wait()
	}
}

// TestPourWhileOthersRead takes contents while the same repository is asked for others, by the taker and by somebody
// for whom the taker waits.
func TestPourWhileOthersRead(t *testing.T) {
	t.Parallel()
	r := plant(t)
	id, head := r.ask("rev-parse", "HEAD:plant.hcl"), r.ask("rev-parse", "HEAD")
	want := r.git("cat-file", "blob", id)
	for _, reader := range []vcs.Reader{vcs.ReaderAuto, vcs.ReaderGoGit, vcs.ReaderGit} {
		opened := r.open(reader)
		err := opened.Pour(t.Context(), []string{id, id}, func(_ int, data []byte) error {
			done := make(chan error)
			go func() {
				_, err := opened.Tree(t.Context(), head)
				done <- err
			}()
			if err := <-done; err != nil {
				return err
			}
			other, err := opened.Blob(t.Context(), id)
			if string(other) != want || string(data) != want {
				t.Errorf("%v: got %q and %q, want %q", reader, data, other, want)
			}
			return err
		})
		if err != nil {
			t.Errorf("%v: %v", reader, err)
		}
	}
}
