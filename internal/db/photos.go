package db

import (
	"github.com/jackc/pgx/v5"

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
