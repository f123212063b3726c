package page

import (
	"slices"
	"strings"

	"blockfield/engine/words"
)

// KeptJob is a job that the browser keeps.
type KeptJob struct {
	ID       string
	Title    string // empty: it cannot be read
	Client   string // who it is for; may be empty
	Revision string
	State    string // the state that it passed last, one of design.States
	Begun    string // day and time
}

// over are the states of jobs that nobody works on any more.
var over = []string{"closed", "lapsed"}

// Over reports whether nobody works on it any more.
func (j KeptJob) Over() bool { return slices.Contains(over, j.State) }

// named reports whether each of the words stands in what is said of the job.
func (j KeptJob) named(by []string) bool {
	return holdsEach(strings.ToLower(j.Title+" "+j.Client+" "+j.Revision), by)
}

// jobList is what the template of the list is made of.
type jobList struct {
	*view
	Now, Over []KeptJob
	Wanted    bool // jobs were looked for
}

// JobList is the list of the kept jobs in the menu of files: those whose name, client or
// revision hold each of the words that are looked for.
func JobList(r words.Reader, jobs []KeptJob, wanted string) Fragment {
	v := &view{Input: Input{Words: r}}
	by := strings.Fields(strings.ToLower(wanted))
	list := jobList{view: v, Wanted: len(by) > 0}
	for _, job := range jobs {
		switch {
		case !job.named(by):
		case job.Over():
			list.Over = append(list.Over, job)
		default:
			list.Now = append(list.Now, job)
		}
	}
	return Fragment{"job-list", v.render("job-list", list)}
}

// JobLine says in one line what a kept job is.
func (v *view) JobLine(j KeptJob) string {
	parts := []string{j.Begun}
	if j.State != "" {
		parts = append(parts, v.T("state/"+j.State))
	}
	if j.Client != "" {
		parts = append(parts, j.Client)
	}
	return strings.Join(parts, " · ")
}

// jobEntry is one line of the list.
type jobEntry struct {
	*view
	KeptJob
}

// Entry is the line of a job.
func (l jobList) Entry(j KeptJob) jobEntry { return jobEntry{l.view, j} }

// Name is what the job is called.
func (e jobEntry) Name() string {
	if e.Title == "" {
		return e.T("jobs/unread")
	}
	return e.Title
}
