package intake

import (
	"math"
	"time"

	"github.com/riverqueue/river"
	"github.com/riverqueue/river/rivertype"
)

// Queues of their own, so that neither a slow carrier nor heavy photos can keep turns
// waiting.
const (
	turnQueue  = "turns"
	sendQueue  = "sends"
	photoQueue = "photos"
)

// photoWorkers is how many photos are opened at once here: each takes memory and a core.
const photoWorkers = 2

// tries is how often a job is run before the queue gives it up. Jobs fail only where
// the database does, and then the outage may be long.
const tries = 10000

// turnArgs ask for a turn of a talk because of one message.
type turnArgs struct {
	ConversationID int64 `json:"conversation_id"`
	MessageID      int64 `json:"message_id"`
	// AtOnce: do not wait for more of the same thought.
	AtOnce bool `json:"at_once,omitempty"`
	// Tried is how often the pure part failed at it before there was a job.
	Tried int `json:"tried,omitempty"`

	wait time.Duration // before it is looked at; of a turn that is made where its message came in
}

// wakeArgs ask to speak up in a talk where nothing came in.
type wakeArgs struct {
	ConversationID int64 `json:"conversation_id"`
}

// sendArgs ask to send what waits in a talk.
type sendArgs struct {
	ConversationID int64 `json:"conversation_id"`
}

// statusArgs ask to act on what a provider said of a message after it was sent.
type statusArgs struct {
	Channel    string      `json:"channel"`
	ProviderID string      `json:"provider_id"`
	Meaning    FailureKind `json:"meaning"`
	Code       string      `json:"code"`
}

// photoArgs ask to open one photo.
type photoArgs struct {
	PhotoID int64 `json:"photo_id"`
}

// sweepArgs ask to look for what is overdue.
type sweepArgs struct{}

func (turnArgs) Kind() string   { return "turn" }
func (wakeArgs) Kind() string   { return "wake" }
func (sendArgs) Kind() string   { return "send" }
func (statusArgs) Kind() string { return "status" }
func (photoArgs) Kind() string  { return "photo" }
func (sweepArgs) Kind() string  { return "sweep" }

func (turnArgs) InsertOpts() river.InsertOpts  { return river.InsertOpts{Queue: turnQueue} }
func (wakeArgs) InsertOpts() river.InsertOpts  { return river.InsertOpts{Queue: turnQueue} }
func (sweepArgs) InsertOpts() river.InsertOpts { return river.InsertOpts{Queue: turnQueue} }
func (photoArgs) InsertOpts() river.InsertOpts { return river.InsertOpts{Queue: photoQueue} }
func (sendArgs) InsertOpts() river.InsertOpts  { return river.InsertOpts{Queue: sendQueue} }
func (statusArgs) InsertOpts() river.InsertOpts {
	return river.InsertOpts{Queue: sendQueue}
}

func (s *Service) queueConfig() *river.Config {
	workers := river.NewWorkers()
	river.AddWorker(workers, river.WorkFunc(s.workTurn))
	river.AddWorker(workers, river.WorkFunc(s.workWake))
	river.AddWorker(workers, river.WorkFunc(s.workSend))
	river.AddWorker(workers, river.WorkFunc(s.workStatus))
	river.AddWorker(workers, river.WorkFunc(s.workSweep))
	river.AddWorker(workers, river.WorkFunc(s.workKeep))
	queues := map[string]river.QueueConfig{
		turnQueue: {MaxWorkers: max(2, s.opts.TurnWorkers/2)}, // most turns need no job
		sendQueue: {MaxWorkers: s.opts.SendWorkers},
	}
	if s.opts.Photos != nil {
		river.AddWorker(workers, river.WorkFunc(s.workPhoto))
		queues[photoQueue] = river.QueueConfig{MaxWorkers: photoWorkers}
	}
	s.addAlerts(workers, queues)
	return &river.Config{
		Queues:  queues,
		Workers: workers,
		// Measured: 5 ms instead of the default 100 ms brings a job's start from 53 ms
		// after its commit to 1 ms. The poll is for jobs that were put off.
		FetchCooldown:               5 * time.Millisecond,
		FetchPollInterval:           200 * time.Millisecond,
		JobTimeout:                  jobTimeout,
		RescueStuckJobsAfter:        rescueAfter,
		MaxAttempts:                 tries,
		RetryPolicy:                 retryPolicy{s.opts.Real},
		Test:                        river.TestConfig{Time: queueTime{s.opts.Real}},
		CompletedJobRetentionPeriod: time.Hour,
		Logger:                      s.log,
		PeriodicJobs: []*river.PeriodicJob{
			river.NewPeriodicJob(river.PeriodicInterval(s.opts.SweepEvery), func() (river.JobArgs, *river.InsertOpts) {
				// Once is enough: what one misses, the next finds.
				return sweepArgs{}, &river.InsertOpts{MaxAttempts: 1}
			}, nil),
			// At the start as well: a process may be restarted more often than that.
			river.NewPeriodicJob(river.PeriodicInterval(keepEvery), func() (river.JobArgs, *river.InsertOpts) { return keepArgs{}, nil },
				&river.PeriodicJobOpts{RunOnStart: true}),
		},
	}
}

// retryPolicy tries a failed job again soon, then ever more seldom, at least once a minute.
type retryPolicy struct{ now func() time.Time }

// NextRetry is when to run the job again.
func (p retryPolicy) NextRetry(job *rivertype.JobRow) time.Time {
	return p.now().Add(retryWait(len(job.Errors)))
}

// retryWait is 1/4 s, doubled with each failure before this one, up to a minute.
func retryWait(failures int) time.Duration {
	const first, most = 250 * time.Millisecond, time.Minute
	if failures > 16 {
		return most
	}
	return min(most, time.Duration(math.Exp2(float64(failures)))*first)
}

// queueTime gives the queue our time for what it puts off: by a machine's clock that is
// ahead, a job put off for seconds would wait for hours. (The library has its setting for
// this among those for tests.) Where it asks the database, that uses its own clock.
type queueTime struct{ now func() time.Time }

func (q queueTime) Now() time.Time       { return q.now() }
func (q queueTime) NowOrNil() *time.Time { return nil }
