package examples

import (
	"fmt"
	"maps"
)

// A State is the plant's files after a commit of the story, by path.
type State struct {
	Commit Commit
	// Before are the files of the commit that it was made on, Files those
	// that it leaves, or would have left had it not been refused.
	Before, Files map[string]string
}

// States follows commits and returns what each of them leaves. The error
// names a commit that deletes what is not there or merges no known branch.
func States(commits []Commit) ([]State, error) {
	branches := map[string]map[string]string{"": {}}
	states := make([]State, 0, len(commits))
	for _, c := range commits {
		before, ok := branches[c.Branch]
		if !ok {
			before = branches[""]
		}
		after := maps.Clone(before)
		if c.Merge != "" {
			side, ok := branches[c.Merge]
			if !ok {
				return nil, fmt.Errorf("%s: there is no branch %s", c.Subject, c.Merge)
			}
			join(after, before, side)
		}
		maps.Copy(after, c.Write)
		for _, path := range c.Delete {
			if _, ok := after[path]; !ok {
				return nil, fmt.Errorf("%s: there is no file %s to delete", c.Subject, path)
			}
			delete(after, path)
		}
		states = append(states, State{Commit: c, Before: before, Files: after})
		if !c.Refused {
			branches[c.Branch] = after
		}
	}
	return states, nil
}

// join adds the files that only a branch has. The branches of the story only
// add files, so that nothing else is needed to know what git makes of a merge.
func join(after, before, side map[string]string) {
	for path, text := range side {
		if _, ok := before[path]; !ok {
			after[path] = text
		}
	}
}
