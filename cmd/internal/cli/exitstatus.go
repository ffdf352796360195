package cli

// Exit statuses.
const (
	statusClean    = 0
	statusObjected = 1
	statusUsage    = 2
	statusFailed   = 3
	// statusInterrupted is what shells report of a program that SIGINT ended.
	statusInterrupted = 130
)

// exitStatuses says what each status means: in the help, the manual page and the
// README alike.
func exitStatuses() [][2]string {
	return [][2]string{
		{"0", "nothing to object to; it is never 0 when nothing was checked"},
		{"1", "something to object to: a nonconformity, a change that can not be executed, evidence that does not hold, a file that is not laid out, a wrong cell in a table, something that setup --check misses"},
		{"2", "wrong usage"},
		{"3", "the job could not be done: no repository, no plant, a disk that is full"},
		{"130", "interrupted"},
	}
}
