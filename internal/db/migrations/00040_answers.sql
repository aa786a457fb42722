-- The owner's answers to what customers often ask, as the shop file has them, to be found
-- by full-text search.

-- +goose Up

-- The words that tell something of a question; where it has none such ("where are you?"),
-- all of them, under 'plain'.
-- +goose StatementBegin
CREATE FUNCTION question_words(language text, question text) RETURNS tsvector LANGUAGE sql IMMUTABLE PARALLEL SAFE AS $$
    SELECT to_tsvector(CASE language WHEN 'en' THEN 'english'::regconfig WHEN 'es' THEN 'spanish'::regconfig
        ELSE 'simple'::regconfig END, left(question, 2000))
$$;
-- +goose StatementEnd

-- One row for each way to ask. Questions are kept without accents: people leave them out.
CREATE TABLE answers (
    entry    integer NOT NULL,        -- which answer
    place    integer NOT NULL,        -- which way to ask for it
    language text NOT NULL CHECK (language IN ('en', 'es')), -- of question and answer
    question text NOT NULL CHECK (question <> ''),
    answer   text NOT NULL CHECK (answer <> ''),
    kind     text NOT NULL CHECK (kind IN ('en', 'es', 'plain')), -- by which its words are told
    words    tsvector NOT NULL GENERATED ALWAYS AS (question_words(kind, question)) STORED,
    PRIMARY KEY (entry, place)
);
CREATE INDEX answers_words ON answers USING gin (words);
