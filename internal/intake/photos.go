package intake

import (
	"bytes"
	"context"
	"errors"
	"math"
	"slices"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/riverqueue/river"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/photo"
)

// PhotoRoom is what photos are opened with.
type PhotoRoom struct {
	Lab *photo.Lab
	// Fetcher gets photos that the carrier keeps; nil: only those that come by mail are had.
	Fetcher *photo.Fetcher
	// Delete removes a photo at the carrier once it is here.
	Delete bool
	// Wait is how long a turn waits for the photos of its messages, to speak of them at
	// once; 0: the default.
	Wait time.Duration
}

const (
	defaultPhotoWait = 10 * time.Second
	// photoTime bounds one try to get and open a photo.
	photoTime = 45 * time.Second
	// notYet is how long a photo that the carrier does not have may still turn up there.
	notYet = 10 * time.Minute
)

func (r *PhotoRoom) wait() time.Duration {
	if r.Wait > 0 {
		return r.Wait
	}
	return defaultPhotoWait
}

// askForPhotos asks for a message's photos to be opened.
func (s *Service) askForPhotos(ctx context.Context, tx pgx.Tx, messageID int64, photos []db.PhotoSource) error {
	if len(photos) == 0 || s.opts.Photos == nil {
		return nil
	}
	ids, err := db.PhotosOf(ctx, tx, messageID)
	if err != nil || len(ids) == 0 {
		return err
	}
	jobs := make([]river.InsertManyParams, 0, len(ids))
	for _, id := range ids {
		jobs = append(jobs, river.InsertManyParams{Args: photoArgs{PhotoID: id}})
	}
	_, err = s.queue.InsertManyTx(ctx, tx, jobs)
	return err
}

// workPhoto gets one photo, makes it safe and keeps it.
func (s *Service) workPhoto(ctx context.Context, job *river.Job[photoArgs]) error {
	task, err := db.OpenPhoto(ctx, s.opts.Pool, job.Args.PhotoID)
	if errors.Is(err, db.ErrNotFound) {
		return nil
	}
	if err != nil {
		return err
	}
	work, cancel := context.WithTimeout(ctx, photoTime)
	defer cancel()
	opened, err := s.openPhoto(work, task)
	if err != nil && !s.photoOver(err, task) {
		return err // again later
	}
	if err := s.savePhoto(ctx, task, opened, err); err != nil {
		return err
	}
	s.opts.Step(AfterPhotoCommit)
	s.opts.Metrics.photos.WithLabelValues(photoResult(err)).Inc()
	s.clearAtCarrier(ctx, task, err)
	return nil
}

// photoResult is what a photo came to, in a word for those who count.
func photoResult(err error) string {
	var refused *photo.Refused
	switch {
	case err == nil:
		return "kept"
	case errors.As(err, &refused):
		return "refused"
	}
	return "gone"
}

func (s *Service) openPhoto(ctx context.Context, task db.PhotoTask) (photo.Photo, error) {
	file := task.Original
	if most := s.limits.Load().PhotosOfOne; most > 0 {
		before, err := db.PhotosBefore(ctx, s.opts.Pool, task)
		if err != nil {
			return photo.Photo{}, err
		}
		if before >= most {
			return photo.Photo{}, errTooMany
		}
	}
	if most := s.limits.Load().PhotosADay; most > 0 {
		kept, err := db.PhotosKeptSince(ctx, s.opts.Pool, s.dayOf(s.now()))
		if err != nil {
			return photo.Photo{}, err
		}
		if kept >= most {
			return photo.Photo{}, errTooMany
		}
	}
	if len(file) == 0 {
		if task.Channel != conversation.SMS || s.opts.Photos.Fetcher == nil {
			return photo.Photo{}, photo.ErrGone
		}
		s.opts.Step(BeforePhotoFetch)
		var err error
		if file, err = s.opts.Photos.Fetcher.Fetch(ctx, task.Source); err != nil {
			return photo.Photo{}, err
		}
	}
	s.opts.Step(AfterPhotoFetch)
	return guarded("photo", func() (photo.Photo, error) { return s.opts.Photos.Lab.Open(ctx, bytes.NewReader(file)) })
}

// photoOver says whether another try is of no use.
func (s *Service) photoOver(err error, task db.PhotoTask) bool {
	age := s.since(task.Arrived)
	var refused *photo.Refused
	var broken *BrainError
	switch {
	case errors.Is(err, errTooMany), errors.As(err, &refused), errors.Is(err, photo.ErrHost), errors.Is(err, photo.ErrAddress), errors.Is(err, photo.ErrTooLarge):
		return true
	case errors.As(err, &broken) && !errors.Is(err, context.DeadlineExceeded):
		return age > time.Minute // a decoder's panic: once more, for it may have been memory
	case errors.Is(err, photo.ErrGone):
		return len(task.Original) > 0 || task.Channel != conversation.SMS || age > notYet
	}
	return age > s.opts.GiveUpAfter
}

// savePhoto keeps what came of a photo, and has its message answered where that waited
// for it.
func (s *Service) savePhoto(ctx context.Context, task db.PhotoTask, opened photo.Photo, failure error) error {
	now := s.now()
	return pgx.BeginFunc(ctx, s.opts.Pool, func(tx pgx.Tx) error {
		var err error
		var refused *photo.Refused
		switch {
		case failure == nil:
			err = s.keepPhoto(ctx, tx, task, opened, now)
		case errors.As(failure, &refused):
			err = db.RefusePhoto(ctx, tx, task, lookOf(refused.Why), now)
		case errors.Is(failure, photo.ErrTooLarge):
			err = db.RefusePhoto(ctx, tx, task, conversation.PhotoTooLarge, now)
		default:
			s.log.WarnContext(ctx, "a photo can't be had", "photo", task.ID, "error", failure.Error())
			err = db.LosePhoto(ctx, tx, task, "not_had", now)
		}
		if err != nil {
			return err
		}
		waiting, err := db.PhotosWaiting(ctx, tx, task.ConversationID)
		if err != nil || waiting {
			return err
		}
		// For whatever is the newest message by then: its own job may wait for this photo.
		_, err = s.queue.InsertTx(ctx, tx, turnArgs{ConversationID: task.ConversationID, MessageID: math.MaxInt64}, nil)
		s.opts.Step(BeforePhotoCommit)
		return err
	})
}

func (s *Service) keepPhoto(ctx context.Context, tx pgx.Tx, task db.PhotoTask, p photo.Photo, now time.Time) error {
	twins, err := db.PhotoTwins(ctx, tx, task)
	if err != nil {
		return err
	}
	kept := db.OpenedPhoto{JPEG: p.JPEG, Thumb: p.Thumb, Width: p.Width, Height: p.Height, SHA256: p.SHA256, Likeness: uint64(p.Likeness),
		Sharpness: p.Look.Sharpness, Light: p.Look.Light}
	if len(p.Troubles) > 0 {
		kept.Look = conversation.PhotoLook(p.Troubles[0])
	}
	for _, t := range twins {
		if bytes.Equal(t.SHA256, p.SHA256[:]) || photo.Likeness(t.Likeness).Alike(p.Likeness) {
			kept.Look = conversation.PhotoSame
		}
	}
	return db.KeepPhoto(ctx, tx, task, kept, now)
}

// lookOf is the kind word for a file that is not taken.
func lookOf(w photo.Why) conversation.PhotoLook {
	switch w {
	case photo.WhyVideo:
		return conversation.PhotoVideo
	case photo.WhyDocument:
		return conversation.PhotoDocument
	case photo.WhyAnimated:
		return conversation.PhotoAnimated
	case photo.WhyTooLarge:
		return conversation.PhotoTooLarge
	case photo.WhyBroken, photo.WhyEmpty:
		return conversation.PhotoBroken
	}
	return conversation.PhotoOther
}

// clearAtCarrier removes a photo there once it is here, or is not to be had.
func (s *Service) clearAtCarrier(ctx context.Context, task db.PhotoTask, failure error) {
	room := s.opts.Photos
	if !room.Delete || task.Channel != conversation.SMS || room.Fetcher == nil || failure != nil {
		return
	}
	if err := room.Fetcher.Delete(ctx, task.Source); err != nil {
		s.log.WarnContext(ctx, "a photo stays at the carrier", "photo", task.ID, "error", err.Error())
	}
}

// errTooMany says that there are as many photos as are kept, in a talk or in a day.
var errTooMany = errors.New("more photos than are kept")

// errPhotosFirst says that a turn is to be made when photos of its messages are opened.
var errPhotosFirst = errors.New("photos are still to be opened")

// patience is how long a turn may still wait for photos, so that it can speak of them at
// once. The photo that is ready last brings a turn by itself.
func (s *Service) patience(job *river.Job[turnArgs]) time.Duration {
	if s.opts.Photos == nil || job.Args.AtOnce {
		return 0
	}
	return s.opts.Photos.wait() - s.since(job.CreatedAt)
}

// photosFirst is errPhotosFirst where a turn should wait for photos of its messages.
func (s *Service) photosFirst(ctx context.Context, tx pgx.Tx, h *db.Held) error {
	if !withPhotos(h.Waiting) {
		return nil
	}
	waiting, err := db.PhotosWaiting(ctx, tx, h.ID)
	if err == nil && waiting {
		err = errPhotosFirst
	}
	return err
}

func withPhotos(messages []db.Waiting) bool {
	return slices.ContainsFunc(messages, func(w db.Waiting) bool { return w.Message.Photos > 0 })
}

// addPhotos tells a turn what was seen of photos, where there are any.
func (s *Service) addPhotos(ctx context.Context, tx pgx.Tx, h *db.Held) ([]int64, error) {
	if !withPhotos(h.Waiting) && !h.Talk.HasPhotos() {
		return nil, nil
	}
	return db.AddPhotos(ctx, tx, h.ID, h.Waiting)
}
