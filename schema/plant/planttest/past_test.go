package planttest_test

import (
	"bytes"
	"os"
	"strconv"
	"testing"

	"homerun/schema/plant/planttest"
)

func TestPastIsTheSameTwice(t *testing.T) {
	t.Parallel()
	o := planttest.PastOptions{Runs: 96, Files: 8, Commits: 200, Seed: 3}
	var first, second bytes.Buffer
	truth, err := planttest.Past(&first, o)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := planttest.Past(&second, o); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) {
		t.Error("two histories of the same options differ")
	}
	if len(truth.Merges) == 0 || len(truth.Deeds) < 400 {
		t.Errorf("a poor history: %d merges, %d deeds", len(truth.Merges), len(truth.Deeds))
	}
	if n, _ := strconv.Atoi(os.Getenv("PAST_RUNS")); n > 0 {
		files, _ := strconv.Atoi(os.Getenv("PAST_FILES"))
		f, _ := os.Create(os.Getenv("PAST_OUT"))
		planttest.Past(f, planttest.PastOptions{Runs: n, Files: files, Commits: 3000, Seed: 1})
		f.Close()
	}
}
