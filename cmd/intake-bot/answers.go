package main

import (
	"context"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/intake"
	"example.com/intake-bot/internal/shop"
)

// answers finds the owner's answers in the database.
var answers = intake.Answers{Asked: shop.QuestionsIn, Same: shop.AskForTheSame}

// putAnswers replaces the owner's answers by those of a shop file.
func putAnswers(ctx context.Context, pool *pgxpool.Pool, f *shop.File) error {
	return db.InTx(ctx, pool, func(tx pgx.Tx) error { return db.PutAnswers(ctx, tx, questionsOf(f)) })
}

// questionsOf are the shop file's, as the database takes them.
func questionsOf(f *shop.File) []db.Question {
	var out []db.Question
	for _, a := range f.Asks() {
		if a.Answer != "" {
			out = append(out, db.Question{Entry: a.Entry, Language: a.Language, Question: a.Question, Answer: a.Answer})
		}
	}
	return out
}
