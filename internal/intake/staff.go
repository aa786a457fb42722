package intake

import (
	"context"
	"fmt"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
)

// Shop is the one in force.
func (s *Service) Shop() *conversation.Shop { return s.shop.Load() }

// SendSoon sees that what waits to be sent in a talk goes out once tx is committed: for
// messages that people of staff write.
func (s *Service) SendSoon(ctx context.Context, tx pgx.Tx, conversationID int64) error {
	if _, err := s.queue.InsertTx(ctx, tx, sendArgs{ConversationID: conversationID}, nil); err != nil {
		return fmt.Errorf("ask to send in talk %d: %w", conversationID, err)
	}
	return nil
}
