package cli_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// typed are beginnings of lines and what a shell has to make of them; a space
// at the end says that the word is complete.
var typed = [][2]string{
	{"git homeru", "git homerun "},
	{"git homerun expl", "git homerun explain "},
	{"git homerun explain length-perm", "git homerun explain length-permanent-link "},
	{"git homerun lint --intro", "git homerun lint --introduced "},
	{"git homerun lint --format sa", "git homerun lint --format sarif "},
	{"git homerun lint --format=qu", "git homerun lint --format=quality "},
	{"git homerun lint --at as-b", "git homerun lint --at as-built "},
	{"git homerun order HEAD..as-b", "git homerun order HEAD..as-built "},
	{"git homerun history Büro-", "git homerun history Büro-1 "},
	{"git homerun --plant pi", "git homerun --plant pier "},
	{"git homerun trace 1B-A:1", "git homerun trace 1B-A:10 "},
	{"git homerun ready 40GBASE-T", "git homerun ready 40GBASE-T "},
	{"git homerun ready 10GBASE-T --in Bü", "git homerun ready 10GBASE-T --in Büro-1 "},
	{"git homerun history --field leng", "git homerun history --field length "},
	{"git homerun audit --formerly as-b", "git homerun audit --formerly as-built "},
	{"git homerun init --fire-code EN", "git homerun init --fire-code EN-50575 "},
	{"git homerun hook inst", "git homerun hook install "},
	{"git homerun completion zs", "git homerun completion zsh "},
}

// typedFiles are beginnings of lines that the name of a file ends.
var typedFiles = [][2]string{
	{"git homerun lint --output pla", "git homerun lint --output plant.hcl "},
	{"git homerun lint --output=pla", "git homerun lint --output=plant.hcl "},
}

// newCompletionRoom has a tag, a plain label, and labels that a shell must not
// get to see.
func newCompletionRoom(t *testing.T) *room {
	t.Helper()
	r := newRoom(t)
	r.env = append(r.env, "LC_ALL=C.UTF-8")
	r.write("halls.hcl", "panel \"1B-A\" {\n  space = \"Büro-1\"\n  ports = 10\n}\nspace \"Büro-1\" {\n  kind = \"corridor\"\n}\nspace \"$(touch forged)\" {\n  kind = \"corridor\"\n}\nspace \"x;touch forged\" {\n  kind = \"corridor\"\n}\n")
	r.mustGit(r.dir, "add", ".")
	r.mustGit(r.dir, "commit", "-qm", "first")
	r.mustGit(r.dir, "tag", "as-built")
	r.mustGit(r.dir, "tag", "x`touch`")
	return r
}

// shell runs a shell that must be there, in the room.
func (r *room) shell(name string, args ...string) string {
	r.t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		r.t.Skip(name + " is not here")
	}
	cmd := exec.Command(path, args...)
	cmd.Dir, cmd.Env = r.dir, r.env
	out, err := cmd.CombinedOutput()
	if err != nil {
		r.t.Fatalf("%s: %v\n%s", name, err, out)
	}
	return string(out)
}

// script writes the completion for a shell into a file of its own.
func (r *room) script(shell string) string {
	r.t.Helper()
	text, status := r.homerun("completion", shell)
	if status != 0 {
		r.t.Fatalf("exit status %d:\n%s", status, text)
	}
	dir := filepath.Join(filepath.Dir(r.dir), "functions")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		r.t.Fatal(err)
	}
	file := filepath.Join(dir, "_git-homerun")
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		r.t.Fatal(err)
	}
	return file
}

// TestCompletionInBash completes as readline would, by way of git's own
// completion for bash.
func TestCompletionInBash(t *testing.T) {
	t.Parallel()
	const ofGit = "/usr/share/bash-completion/completions/git"
	if _, err := os.Stat(ofGit); err != nil {
		t.Skip("git's completion for bash is not here")
	}
	r := newCompletionRoom(t)
	const try = `
source ` + ofGit + `
source "$1"
shift
for line; do
	# readline breaks words at = and : too.
	broken=${line//=/ = }
	read -r -a COMP_WORDS <<<"${broken//:/ : }"
	COMP_CWORD=$((${#COMP_WORDS[@]} - 1)) COMP_LINE=$line COMP_POINT=${#line} COMPREPLY=()
	__git_wrap__git_main
	case "$line" in
	*=*) printf '%s=%s\n' "${line%=*}" "${COMPREPLY[*]}" ;;
	*:*) printf '%s:%s\n' "${line%:*}" "${COMPREPLY[*]}" ;;
	*) printf '%s %s\n' "${line% *}" "${COMPREPLY[*]}" ;;
	esac
done
`
	args := []string{"--norc", "-c", try, "bash", r.script("bash")}
	var want strings.Builder
	for _, line := range typed {
		args = append(args, line[0])
		want.WriteString(line[1] + "\n")
	}
	for _, line := range typedFiles {
		args = append(args, line[0])
		want.WriteString(strings.TrimSuffix(line[1], " ") + "\n") // readline itself ends the name of a file
	}
	if got := r.shell("bash", args...); got != want.String() {
		t.Errorf("got\n%swant\n%s", got, want.String())
	}
}

// TestCompletionInZsh types into a zsh with its own completion for git, on a
// terminal, and notes what the line has become.
func TestCompletionInZsh(t *testing.T) {
	t.Parallel()
	r := newCompletionRoom(t)
	file := r.script("zsh")
	notes := filepath.Join(filepath.Dir(r.dir), "notes")
	const try = `
zmodload zsh/zpty
file=$1 notes=$2
shift 2
zpty inner 'zsh -f -i'
zpty -w inner "fpath=(${file:h:q} \$fpath); autoload -Uz compinit; compinit -u -D; setopt no_list_beep"
zpty -w inner "note() { print -r -- \"\$BUFFER\" >>${notes:q}; BUFFER= }; zle -N note; bindkey '^T' note; bindkey '^I' complete-word"
for line; do
	zpty -w -n inner "$line"$'\t\x14'
done
zpty -w inner $'\nexit'
while zpty -r inner ignored; do :; done
`
	args := []string{"-f", "-c", try, "zsh", file, notes}
	var want strings.Builder
	for _, line := range slices.Concat(typed, typedFiles) {
		args = append(args, line[0])
		want.WriteString(line[1] + "\n")
	}
	said := r.shell("zsh", args...)
	got, err := os.ReadFile(notes)
	if err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	if string(got) != want.String() {
		t.Errorf("got\n%swant\n%s", got, want.String())
	}
}

// TestCompletionInFish asks fish with its own completion for git.
func TestCompletionInFish(t *testing.T) {
	t.Parallel()
	r := newCompletionRoom(t)
	const try = `
source $argv[1]
for line in $argv[2..]
	for found in (complete -C $line)
		echo (string replace -r '[^ ]*$' '' -- $line)(string split -f 1 \t -- $found)" "
	end
end
`
	args := []string{"-c", try, r.script("fish")}
	var want strings.Builder
	for _, line := range slices.Concat(typed, typedFiles) {
		args = append(args, line[0])
		want.WriteString(line[1] + "\n")
	}
	if got := r.shell("fish", args...); got != want.String() {
		t.Errorf("got\n%swant\n%s", got, want.String())
	}
}

// TestCompletionOffersNoCommands asks for names that a shell would run.
func TestCompletionOffersNoCommands(t *testing.T) {
	t.Parallel()
	r := newCompletionRoom(t)
	for _, args := range [][]string{{"history", ""}, {"order", ""}, {"lint", "--at", ""}, {"lint", "--plant", ""}, {"trace", ""}} {
		out, status := r.homerun(append([]string{"__complete"}, args...)...)
		if status != 0 || !strings.Contains(out, ":4") || strings.ContainsAny(out, "$;`()") {
			t.Errorf("%v: exit status %d:\n%s", args, status, out)
		}
	}
}

// TestEveryCommandIsCompleted holds the list of commands against the help.
func TestEveryCommandIsCompleted(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	out, _ := r.homerun("__complete", "")
	usage, _ := r.homerun("-h")
	_, list, _ := strings.Cut(usage, "\ncommands:\n")
	list, _, _ = strings.Cut(list, "\n\n")
	var shown []string
	for line := range strings.Lines(list) {
		shown = append(shown, strings.Fields(line)[0])
	}
	if len(shown) < 8 {
		t.Fatalf("the help lists %v", shown)
	}
	for _, name := range shown {
		if !strings.Contains("\n"+out, "\n"+name+"\t") {
			t.Errorf("%s is not completed", name)
		}
		if _, status := r.homerun("help", name); status != 0 {
			t.Errorf("help %s: exit status %d", name, status)
		}
		mistyped := name + "x"
		if said, status := r.homerun(mistyped); status != 2 || !strings.Contains(said, "did you mean git homerun ") {
			t.Errorf("%s: exit status %d:\n%s", mistyped, status, said)
		}
	}
	if !slices.Contains(shown, "completion") || !slices.Contains(shown, "man") {
		t.Error(fmt.Sprint("commands ", shown))
	}
}
