package vcs_test

import (
	"os"
	"path/filepath"
)

// forms are the repositories over which both readers must agree with git. A form is fit when the reader in this
// process serves it.
var forms = []struct {
	name string
	fit  bool
	make func(f *repo) *repo
}{
	{"plain", true, func(f *repo) *repo { return f.plant() }},
	{"packed objects and refs", true, func(f *repo) *repo {
		r := f.plant()
		r.git("gc", "-q", "--prune=now")
		r.git("pack-refs", "--all")
		return r
	}},
	{"many packs, commit graph, pack index", true, func(f *repo) *repo {
		r := f.plant()
		r.git("repack", "-qd")
		r.commit("floor/4.hcl", "four\n", "Add floor 4")
		r.git("repack", "-qd")
		r.git("commit-graph", "write", "--reachable")
		r.git("multi-pack-index", "write")
		return r
	}},
	{"unborn branch", true, func(f *repo) *repo {
		r := f.start()
		r.write("plant.hcl", "first\n")
		r.git("add", "plant.hcl")
		return r
	}},
	{"empty", true, func(f *repo) *repo { return f.start() }},
	{"linked work tree", true, func(f *repo) *repo {
		r := f.plant()
		r.git("worktree", "add", "-q", "../linked", "wing")
		linked := r.in(filepath.Join(filepath.Dir(r.dir), "linked"))
		linked.write("only-here.hcl", "linked\n")
		linked.git("add", "only-here.hcl")
		return linked
	}},
	{"subfolder", true, func(f *repo) *repo {
		r := f.plant()
		return r.in(filepath.Join(r.dir, "floor"))
	}},
	{"inside .git", true, func(f *repo) *repo {
		r := f.plant()
		return r.in(filepath.Join(r.dir, ".git"))
	}},
	{"bare", true, func(f *repo) *repo {
		r := f.plant()
		r.git("clone", "-q", "--bare", ".", "../bare.git")
		return r.in(filepath.Join(filepath.Dir(r.dir), "bare.git"))
	}},
	{"detached HEAD", true, func(f *repo) *repo {
		r := f.plant()
		r.git("commit", "-qm", "Add floor 3")
		r.git("switch", "-q", "--force", "--detach", "HEAD~1")
		return r
	}},
	{"merge in progress", true, conflict},
	{"odd names", true, func(f *repo) *repo {
		r := f.plant()
		for _, name := range []string{"åäö.hcl", "two words.hcl", "line\nbreak.hcl", "tab\there.hcl", `quote".hcl`, "-q", "*.hcl", ":(top).hcl", "commit x", "\xff\xfe.hcl", " "} {
			r.write(name, name+"\n")
		}
		r.git("add", "--", ".")
		r.git("commit", "-qm", "Odd names")
		r.write("späť/neu.hcl", "untracked\n")
		return r
	}},
	{"links and submodule", true, linked},
	{"announced paths", true, func(f *repo) *repo {
		r := f.plant()
		r.write("announced.hcl", "later\n")
		r.git("add", "-N", "announced.hcl")
		r.write("empty.hcl", "")
		r.git("add", "empty.hcl")
		return r
	}},
	{"index version 2", true, func(f *repo) *repo {
		r := f.plant()
		r.git("update-index", "--index-version", "2")
		return r.indexVersion(2)
	}},
	{"index version 3", true, func(f *repo) *repo {
		r := f.plant()
		r.write("announced.hcl", "later\n")
		r.git("add", "-N", "announced.hcl")
		r.git("update-index", "--skip-worktree", "floor/1.hcl")
		r.git("update-index", "--assume-unchanged", "plant.hcl")
		return r.indexVersion(3)
	}},
	{"index version 4", true, func(f *repo) *repo {
		r := f.plant()
		r.git("update-index", "--index-version", "4")
		return r.indexVersion(4)
	}},
	{"fsmonitor, a hook", true, func(f *repo) *repo { return f.plant().monitored() }},
	{"fsmonitor, git's own", true, func(f *repo) *repo {
		r := f.plant().monitored()
		r.git("config", "core.fsmonitor", "true")
		return r
	}},
	{"untracked cache", true, func(f *repo) *repo {
		r := f.plant()
		r.git("update-index", "--untracked-cache")
		return r
	}},
	{"git folder elsewhere", true, func(f *repo) *repo {
		r := f.plant()
		outside := filepath.Dir(r.dir)
		return r.in(outside).with("GIT_DIR=plant/.git", "GIT_WORK_TREE=plant")
	}},
	{"another index, relative", true, func(f *repo) *repo {
		r := f.plant().with("GIT_INDEX_FILE=.git/other-index")
		r.git("read-tree", "HEAD~2")
		return r.in(filepath.Join(r.dir, "floor"))
	}},
	{"contrary config", true, func(f *repo) *repo {
		r := f.plant()
		r.commit(".mailmap", "Somebody Else <else@example.org> <asa@example.org>\n", "Change the names")
		r.write("order", "plant.hcl\n*\n")
		for key, value := range map[string]string{
			"i18n.logOutputEncoding": "ISO-8859-1", "log.mailmap": "true", "log.showRoot": "false", "log.decorate": "full",
			"log.date": "relative", "log.diffMerges": "combined", "log.abbrevCommit": "true", "format.pretty": "oneline",
			"diff.orderFile": filepath.Join(r.dir, "order"), "diff.relative": "true", "diff.renames": "copies", "diff.noprefix": "true",
			"color.ui": "always", "core.quotePath": "true", "core.abbrev": "5", "status.showUntrackedFiles": "no", "log.follow": "true",
			"diff.ignoreSubmodules": "all",
		} {
			r.git("config", key, value)
		}
		r.git("mv", "plant.hcl", "zplant.hcl")
		r.commit("a.hcl", "a\n", "Rename")
		return r.in(filepath.Join(r.dir, "floor"))
	}},
	{"old commit encoding", true, func(f *repo) *repo {
		r := f.plant()
		r.git("-c", "i18n.commitEncoding=ISO-8859-1", "commit", "-qm", "Pl\xe5t")
		return r
	}},
	{"packed objects of a linked work tree, checksum skipped", true, func(f *repo) *repo {
		r := f.plant()
		r.git("gc", "-q")
		r.git("config", "index.skipHash", "true")
		r.git("worktree", "add", "-q", "../linked", "wing")
		return r.in(filepath.Join(filepath.Dir(r.dir), "linked"))
	}},
	{"git folder set apart", true, func(f *repo) *repo { return f.plant("--separate-git-dir=apart.git") }},
	{"work tree by config", true, func(f *repo) *repo {
		r := f.plant()
		check(f.t, os.Rename(filepath.Join(r.dir, ".git"), filepath.Join(f.dir, "apart.git")))
		r.with("GIT_DIR="+filepath.Join(f.dir, "apart.git")).git("config", "core.worktree", r.dir)
		return r.in(filepath.Join(f.dir, "apart.git"))
	}},
	{"deep in a submodule", true, func(f *repo) *repo {
		r := linked(f)
		return r.in(filepath.Join(r.dir, "module", "floor"))
	}},
	{"split index", true, func(f *repo) *repo {
		// The form is fit; only the index is not, and is read by git.
		r := f.plant()
		r.git("update-index", "--split-index")
		return r
	}},
	{"shallow", false, func(f *repo) *repo {
		r := f.plant()
		r.git("clone", "-q", "--depth=2", "file://"+r.dir, "../shallow")
		return r.in(filepath.Join(filepath.Dir(r.dir), "shallow"))
	}},
	{"objects elsewhere", false, func(f *repo) *repo {
		r := f.plant()
		r.git("clone", "-q", "--shared", ".", "../shared")
		return r.in(filepath.Join(filepath.Dir(r.dir), "shared"))
	}},
	{"object folder by environment", false, func(f *repo) *repo {
		r := f.plant()
		check(f.t, os.Rename(filepath.Join(r.dir, ".git", "objects"), filepath.Join(r.dir, "..", "objects")))
		check(f.t, os.Mkdir(filepath.Join(r.dir, ".git", "objects"), 0o755))
		return r.with("GIT_OBJECT_DIRECTORY=../objects")
	}},
	{"more objects by environment", false, func(f *repo) *repo {
		r := f.plant()
		check(f.t, os.Rename(filepath.Join(r.dir, ".git", "objects"), filepath.Join(f.dir, "more")))
		check(f.t, os.Mkdir(filepath.Join(r.dir, ".git", "objects"), 0o755))
		return r.with("GIT_ALTERNATE_OBJECT_DIRECTORIES=" + filepath.Join(f.dir, "more"))
	}},
	{"sparse checkout", false, func(f *repo) *repo {
		r := f.plant()
		r.commit("wing/a.hcl", "a\n", "Add a wing")
		r.git("sparse-checkout", "set", "--cone", "wing")
		return r
	}},
	{"sparse index", false, func(f *repo) *repo {
		r := f.plant()
		r.commit("wing/a.hcl", "a\n", "Add a wing")
		r.git("sparse-checkout", "set", "--cone", "--sparse-index", "wing")
		return r
	}},
	{"SHA-256", false, func(f *repo) *repo { return f.plant("--object-format=sha256") }},
	{"SHA-256, split index of version 4", false, func(f *repo) *repo {
		r := f.plant("--object-format=sha256")
		r.git("update-index", "--index-version", "4")
		r.git("update-index", "--split-index")
		return r
	}},
	{"SHA-256, sparse index", false, func(f *repo) *repo {
		r := f.plant("--object-format=sha256")
		r.commit("wing/a.hcl", "a\n", "Add a wing")
		r.git("sparse-checkout", "set", "--cone", "--sparse-index", "wing")
		return r
	}},
	{"reftable", false, func(f *repo) *repo {
		if _, err := f.run("init", "-q", "--ref-format=reftable", "probe"); err != nil {
			f.t.Skip("this git cannot make a reftable repository")
		}
		return f.plant("--ref-format=reftable")
	}},
	{"replaced commit", false, func(f *repo) *repo {
		r := f.plant()
		r.git("replace", "--graft", "HEAD~1")
		return r
	}},
	{"replaced file", false, func(f *repo) *repo {
		r := f.plant()
		r.git("replace", r.ask("rev-parse", "HEAD:plant.hcl"), r.ask("rev-parse", "HEAD:floor/1.hcl"))
		return r
	}},
	{"partial clone, all fetched", false, func(f *repo) *repo {
		r := f.plant()
		r.git("config", "uploadpack.allowFilter", "true")
		r.git("clone", "-q", "--filter=blob:none", "file://"+r.dir, "../partial")
		return r.in(filepath.Join(filepath.Dir(r.dir), "partial"))
	}},
}
