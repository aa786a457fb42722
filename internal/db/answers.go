package db

import (
	"context"
	"fmt"

	"github.com/jackc/pgx/v5"
)

// Question is one way to ask for one of the owner's answers.
type Question struct {
	Entry    int // which answer
	Language string
	Question string // without accents
	Answer   string
}

// PutAnswers replaces the owner's answers.
func PutAnswers(ctx context.Context, tx pgx.Tx, questions []Question) error {
	b := &pgx.Batch{}
	// Two processes that start at once put the same ones, one after the other.
	b.Queue(`LOCK TABLE answers IN SHARE ROW EXCLUSIVE MODE`)
	b.Queue(`DELETE FROM answers`)
	for i, q := range questions {
		b.Queue(`INSERT INTO answers (entry, place, language, question, answer, kind)
			SELECT $1, $2, $3, $4, $5, CASE WHEN length(question_words($3, $4)) > 0 THEN $3 ELSE 'plain' END`,
			q.Entry, i, q.Language, storable(q.Question), storable(q.Answer))
	}
	if err := tx.SendBatch(ctx, b).Close(); err != nil {
		return fmt.Errorf("put the owner's answers: %w", err)
	}
	return nil
}

// AnswerFit says how well one of the owner's answers fits a question, from 0 to 1.
type AnswerFit struct {
	Entry  int
	Answer string
	Fit    float64
	Ways   []string // to ask for it
}

// fitAnswers finds the ways to ask that share a word with the question, and weighs what
// they have in common: twice the weight of the common words by that of all words of
// both. A word weighs more the fewer answers it speaks of, one that none speaks of most.
// A question without telling words is compared as it is, with those of that kind only.
const fitAnswers = `
	WITH size AS (SELECT ln(1 + count(DISTINCT entry))::float8 AS unknown, count(DISTINCT entry)::float8 AS entries FROM answers),
	weights AS MATERIALIZED (
		SELECT a.kind, w.lexeme, ln(1 + (SELECT entries FROM size) / count(DISTINCT a.entry))::float8 AS weight
		FROM answers a, unnest(a.words) w GROUP BY a.kind, w.lexeme
	),
	asked AS MATERIALIZED (
		SELECT kind, question_words(kind, $1) AS words FROM unnest(ARRAY['en', 'es', 'plain']) kind
		WHERE kind <> 'plain' OR length(question_words('en', $1)) = 0 OR length(question_words('es', $1)) = 0
	),
	asked_words AS MATERIALIZED (
		SELECT q.kind, w.lexeme, coalesce(g.weight, (SELECT unknown FROM size)) AS weight
		FROM asked q CROSS JOIN LATERAL unnest(q.words) w LEFT JOIN weights g ON g.kind = q.kind AND g.lexeme = w.lexeme
	),
	found AS (
		SELECT a.entry, a.answer, a.kind, a.words FROM asked q JOIN answers a ON a.kind = q.kind
			AND a.words @@ (SELECT string_agg(quote_literal(l), ' | ')::tsquery FROM unnest(tsvector_to_array(q.words)) l)
		WHERE length(q.words) > 0
	)
	SELECT entry, answer, fit, ARRAY(SELECT DISTINCT lower(question) FROM answers w WHERE w.entry = best.entry) FROM (
		SELECT DISTINCT ON (f.entry) f.entry, f.answer, 2 * both_have.weight / (own.weight + theirs.weight) AS fit
		FROM found f
		CROSS JOIN LATERAL (SELECT sum(w.weight) AS weight FROM asked_words w WHERE w.kind = f.kind AND w.lexeme = ANY (tsvector_to_array(f.words))) both_have
		CROSS JOIN LATERAL (SELECT sum(w.weight) AS weight FROM asked_words w WHERE w.kind = f.kind) own
		CROSS JOIN LATERAL (SELECT sum(w.weight) AS weight FROM weights w WHERE w.kind = f.kind AND w.lexeme = ANY (tsvector_to_array(f.words))) theirs
		ORDER BY f.entry, fit DESC
	) best ORDER BY fit DESC, entry LIMIT 5`

// FitAnswers are the owner's answers that fit a question at all, the best first.
func FitAnswers(ctx context.Context, c Conn, question string) ([]AnswerFit, error) {
	rows, err := c.Query(ctx, fitAnswers, storable(question))
	if err != nil {
		return nil, fmt.Errorf("look for an answer: %w", err)
	}
	fits, err := pgx.CollectRows(rows, pgx.RowToStructByPos[AnswerFit])
	if err != nil {
		return nil, fmt.Errorf("look for an answer: %w", err)
	}
	return fits, nil
}
