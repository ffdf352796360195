package cli

import (
	"fmt"
	"io"
	"sync"
	"time"
)

// patience is how long work may take before the user is told that it goes on.
const patience = time.Second

// A progress tells a user in front of a terminal, once a second, what takes so
// long. A nil progress says nothing.
type progress struct {
	mu    sync.Mutex
	w     io.Writer
	doing string
	// done and of count the parts of the work, where it has parts.
	done, of int
	seconds  int
	over     bool
	end      chan struct{}
	once     sync.Once
}

// watch begins to tell on a terminal; on anything else nobody waits for it.
func watch(w io.Writer) *progress {
	p := &progress{w: w, end: make(chan struct{})}
	go p.run()
	return p
}

// say names what is being done now.
func (p *progress) say(doing string) {
	if p == nil {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	p.doing, p.of = doing, 0
}

// count names what is being done now, and how much of it is done. It may be
// called from several goroutines.
func (p *progress) count(doing string, done, of int) {
	if p == nil {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.doing != doing || p.of != of {
		p.doing, p.of, p.done = doing, of, 0
	}
	p.done = max(p.done, done)
}

// left says how far counted work is and how long it takes at the pace so far.
func (p *progress) left() string {
	if p.of == 0 || p.done == 0 {
		return p.doing
	}
	return fmt.Sprintf("%s %d of %d, about %d s left", p.doing, p.done, p.of, (p.seconds*(p.of-p.done)+p.done-1)/p.done)
}

// stop takes the line away. It may be called any number of times.
func (p *progress) stop() {
	if p == nil {
		return
	}
	p.once.Do(func() {
		close(p.end)
		p.mu.Lock()
		defer p.mu.Unlock()
		p.over = true
		if p.seconds > 0 {
			_, _ = io.WriteString(p.w, "\r\x1b[K") // nothing depends on this line
		}
	})
}

func (p *progress) run() {
	tick := time.NewTicker(patience)
	defer tick.Stop()
	for {
		select {
		case <-p.end:
			return
		case <-tick.C:
			p.tell()
		}
	}
}

// tell writes the line over the one before.
func (p *progress) tell() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.over || p.doing == "" {
		return
	}
	p.seconds++
	_, _ = fmt.Fprintf(p.w, "\r\x1b[K%s, %d s", p.left(), p.seconds) // nothing depends on this line
}
