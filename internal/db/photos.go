package db

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

// savePhotoTopics says of photos what they were asked for, by the number of the message
// that they came with.
func savePhotoTopics(b *pgx.Batch, conversationID int64, of map[int]fitcheck.Topic) {
	for n, topic := range of {
		if topic == "" {
			continue
		}
		b.Queue(`UPDATE photos p SET of = $3 FROM messages m
			WHERE m.id = p.message_id AND m.conversation_id = $1 AND m.n = $2`, conversationID, n, topic)
	}
}

// keepFiles stores the files that came with a message itself, by their place in it.
func keepFiles(ctx context.Context, c Conn, messageID int64, photos []PhotoSource) error {
	b := &pgx.Batch{}
	for i, p := range photos {
		if p.Refused != "" {
			b.Queue(`UPDATE photos SET state = 'refused', why = $3 WHERE message_id = $1 AND k = $2`, messageID, i+1, p.Refused)
			continue
		}
		if len(p.File) > 0 {
			b.Queue(`INSERT INTO photo_files (photo_id, original) SELECT id, $3 FROM photos WHERE message_id = $1 AND k = $2`,
				messageID, i+1, p.File)
		}
	}
	if b.Len() == 0 {
		return nil
	}
	if err := c.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("keep files of message %d: %w", messageID, err)
	}
	return nil
}

// PhotosOf are the ids of a message's photos that are still to be opened.
func PhotosOf(ctx context.Context, c Conn, messageID int64) ([]int64, error) {
	rows, err := c.Query(ctx, `SELECT id FROM photos WHERE message_id = $1 AND state = 'referenced' ORDER BY k`, messageID)
	if err != nil {
		return nil, fmt.Errorf("photos of message %d: %w", messageID, err)
	}
	return pgx.CollectRows(rows, pgx.RowTo[int64])
}

// PhotosLeft are photos that are to be opened and have no job of a kind that waits: whoever
// was at them is dead, or another process is at them right now.
func PhotosLeft(ctx context.Context, c Conn, kind string, limit int) ([]int64, error) {
	const sql = `SELECT p.id FROM photos p WHERE p.state = 'referenced' AND NOT EXISTS (SELECT FROM river_job j
		WHERE j.kind = $1 AND j.state IN ('available', 'pending', 'retryable', 'scheduled') AND j.args @> jsonb_build_object('photo_id', p.id))
		ORDER BY p.id LIMIT $2`
	rows, err := c.Query(ctx, sql, kind, limit)
	if err != nil {
		return nil, fmt.Errorf("photos left: %w", err)
	}
	return pgx.CollectRows(rows, pgx.RowTo[int64])
}

// PhotoTask is a photo that is to be opened.
type PhotoTask struct {
	ID             int64
	MessageID      int64
	ConversationID int64
	Channel        conversation.Channel
	Source         string
	Original       []byte // the file itself, where it came with the message
	Arrived        time.Time
}

// OpenPhoto reads a photo that is still to be opened; ErrNotFound where it is done, or gone.
func OpenPhoto(ctx context.Context, c Conn, id int64) (PhotoTask, error) {
	const sql = `
		SELECT p.id, p.message_id, m.conversation_id, m.channel, p.source, f.original, m.received_at
		FROM photos p JOIN messages m ON m.id = p.message_id LEFT JOIN photo_files f ON f.photo_id = p.id
		WHERE p.id = $1 AND p.state = 'referenced'`
	var t PhotoTask
	err := c.QueryRow(ctx, sql, id).Scan(&t.ID, &t.MessageID, &t.ConversationID, &t.Channel, &t.Source, &t.Original, &t.Arrived)
	if errors.Is(err, pgx.ErrNoRows) {
		err = ErrNotFound
	}
	if err != nil {
		return t, fmt.Errorf("photo %d: %w", id, err)
	}
	return t, nil
}

// OpenedPhoto is a photo made safe.
type OpenedPhoto struct {
	JPEG, Thumb   []byte
	Width, Height int
	SHA256        [32]byte
	Likeness      uint64
	Sharpness     float64
	Light         int
	Look          conversation.PhotoLook // why it may be of little use; empty for none
}

// PhotoTwin is another photo of a talk, to tell whether two are the same.
type PhotoTwin struct {
	SHA256   []byte
	Likeness uint64
}

// PhotoTwins are the photos of a task's talk that came before it.
func PhotoTwins(ctx context.Context, c Conn, t PhotoTask) ([]PhotoTwin, error) {
	const sql = `SELECT p.sha256, p.likeness FROM photos p JOIN messages m ON m.id = p.message_id
		WHERE m.conversation_id = $1 AND p.state = 'kept' AND p.id < $2 ORDER BY p.id LIMIT 1000`
	rows, err := c.Query(ctx, sql, t.ConversationID, t.ID)
	if err != nil {
		return nil, fmt.Errorf("photos beside %d: %w", t.ID, err)
	}
	return pgx.CollectRows(rows, func(row pgx.CollectableRow) (w PhotoTwin, err error) {
		var likeness int64
		err = row.Scan(&w.SHA256, &likeness)
		w.Likeness = uint64(likeness)
		return w, err
	})
}

// KeepPhoto stores a photo that was opened; one that another was faster with stays.
func KeepPhoto(ctx context.Context, tx pgx.Tx, t PhotoTask, p OpenedPhoto, now time.Time) error {
	const sql = `UPDATE photos SET state = 'kept', width = $2, height = $3, sha256 = $4, likeness = $5, sharpness = $6, light = $7,
		look = nullif($8, ''), opened_at = $9 WHERE id = $1 AND state = 'referenced'`
	b := &pgx.Batch{}
	b.Queue(sql, t.ID, p.Width, p.Height, p.SHA256[:], int64(p.Likeness), p.Sharpness, p.Light, p.Look, now)
	b.Queue(`INSERT INTO photo_files (photo_id, jpeg, thumb) SELECT id, $2, $3 FROM photos WHERE id = $1 AND state = 'kept'
		ON CONFLICT (photo_id) DO UPDATE SET original = NULL, jpeg = excluded.jpeg, thumb = excluded.thumb`, t.ID, p.JPEG, p.Thumb)
	if err := tx.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("keep photo %d: %w", t.ID, err)
	}
	return nil
}

// RefusePhoto notes why a file is not taken as a photo, and lets go of it.
func RefusePhoto(ctx context.Context, tx pgx.Tx, t PhotoTask, why conversation.PhotoLook, now time.Time) error {
	return endPhoto(ctx, tx, t, "refused", string(why), now)
}

// LosePhoto notes that a photo can't be had any more.
func LosePhoto(ctx context.Context, tx pgx.Tx, t PhotoTask, why string, now time.Time) error {
	return endPhoto(ctx, tx, t, "gone", why, now)
}

func endPhoto(ctx context.Context, tx pgx.Tx, t PhotoTask, state, why string, now time.Time) error {
	b := &pgx.Batch{}
	b.Queue(`UPDATE photos SET state = $2, why = $3, opened_at = $4 WHERE id = $1 AND state = 'referenced'`, t.ID, state, why, now)
	b.Queue(`DELETE FROM photo_files WHERE photo_id = $1 AND jpeg IS NULL`, t.ID)
	if err := tx.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("end photo %d: %w", t.ID, err)
	}
	return nil
}

// PhotosWaiting says whether messages that no turn has taken have photos that are still
// to be opened.
func PhotosWaiting(ctx context.Context, c Conn, conversationID int64) (bool, error) {
	const sql = `SELECT EXISTS (SELECT FROM messages m JOIN photos p ON p.message_id = m.id
		WHERE m.conversation_id = $1 AND m.direction = 'in' AND m.handled_at IS NULL AND p.state = 'referenced')`
	var waiting bool
	if err := c.QueryRow(ctx, sql, conversationID).Scan(&waiting); err != nil {
		return false, fmt.Errorf("photos of talk %d: %w", conversationID, err)
	}
	return waiting, nil
}

// AddPhotos gives messages what was seen of their photos: those that are none don't
// count, and what is worth a word goes with the message it came with, or, where a turn
// took that before, with the first. told are the photos that are then spoken of.
func AddPhotos(ctx context.Context, c Conn, conversationID int64, messages []Waiting) (told []int64, err error) {
	if len(messages) == 0 {
		return nil, nil
	}
	const sql = `SELECT p.id, p.message_id, p.state = 'refused', coalesce(p.why, p.look, ''), p.told
		FROM photos p JOIN messages m ON m.id = p.message_id
		WHERE m.conversation_id = $1 AND p.state IN ('kept', 'refused') AND (m.handled_at IS NULL OR NOT p.told) ORDER BY p.id`
	rows, err := c.Query(ctx, sql, conversationID)
	if err != nil {
		return nil, fmt.Errorf("photos of talk %d: %w", conversationID, err)
	}
	at := map[int64]int{}
	for i, w := range messages {
		at[w.ID] = i
	}
	var id, messageID int64
	var refused, known bool
	var look conversation.PhotoLook
	_, err = pgx.ForEachRow(rows, []any{&id, &messageID, &refused, &look, &known}, func() error {
		i, here := at[messageID]
		if here && refused {
			messages[i].Message.Photos--
		}
		if look != "" && !known {
			messages[i].Message.Looks = append(messages[i].Message.Looks, look)
			told = append(told, id)
		}
		return nil
	})
	if err != nil {
		return nil, fmt.Errorf("photos of talk %d: %w", conversationID, err)
	}
	return told, nil
}

// PhotosTold notes that customers heard what was seen of their photos.
func PhotosTold(ctx context.Context, c Conn, ids []int64) error {
	if len(ids) == 0 {
		return nil
	}
	if _, err := c.Exec(ctx, `UPDATE photos SET told = true WHERE id = ANY ($1)`, ids); err != nil {
		return fmt.Errorf("photos spoken of: %w", err)
	}
	return nil
}

// PhotoFile is a kept photo, whole or small, by the ref of its lead, the number of its
// message and its place there, as the lead record names it. ErrNotFound where there is none.
func PhotoFile(ctx context.Context, c Conn, ref string, n, k int, small bool) ([]byte, error) {
	const sql = `SELECT CASE WHEN $4 THEN f.thumb ELSE f.jpeg END
		FROM conversations c JOIN messages m ON m.conversation_id = c.id JOIN photos p ON p.message_id = m.id
		JOIN photo_files f ON f.photo_id = p.id
		WHERE c.ref = $1 AND m.n = $2 AND p.k = $3 AND p.state = 'kept'`
	var file []byte
	err := c.QueryRow(ctx, sql, ref, n, k, small).Scan(&file)
	if errors.Is(err, pgx.ErrNoRows) {
		err = ErrNotFound
	}
	if err != nil {
		return nil, fmt.Errorf("photo %s-%d-%d: %w", ref, n, k, err)
	}
	return file, nil
}
