package labels_test

import (
	"io/fs"
	"maps"
	"os"
	"slices"
	"testing"

	"homerun/diffreport"
	"homerun/diffreport/labels"
	"homerun/examples"
	"homerun/schema"
	"homerun/schema/plant"
)

// build makes a plant of files by path.
func build(files map[string]string) *plant.Plant {
	reader := schema.NewReader()
	var read []*schema.File
	for _, p := range slices.Sorted(maps.Keys(files)) {
		read = append(read, reader.ReadFile(p, files[p]))
	}
	return plant.Build(".", read)
}

// example reads the record files of an example.
func example(t *testing.T, name string) map[string]string {
	t.Helper()
	root, files := os.DirFS("../../examples/"+name), make(map[string]string)
	err := fs.WalkDir(root, ".", func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !schema.IsRecords(p) {
			return err
		}
		text, err := fs.ReadFile(root, p)
		files[p] = string(text)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// story is the plant after every commit of the example's story.
func story(t *testing.T) []*plant.Plant {
	t.Helper()
	commits, err := examples.Story()
	if err != nil {
		t.Fatal(err)
	}
	states, err := examples.States(commits)
	if err != nil {
		t.Fatal(err)
	}
	plants := []*plant.Plant{nil}
	for _, s := range states {
		plants = append(plants, build(s.Files))
	}
	return plants
}

// change is the order between two plants and its labels.
func change(base, head *plant.Plant) (diffreport.Order, labels.Set) {
	order := diffreport.Plan(base, head, diffreport.Compare(base, head, diffreport.Options{}), diffreport.PlanOptions{})
	return order, labels.For(order, head)
}

// count counts identifiers.
func count(ids []string) map[string]int {
	n := make(map[string]int)
	for _, id := range ids {
		n[id]++
	}
	return n
}
