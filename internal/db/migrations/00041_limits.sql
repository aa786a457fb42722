-- What keeps the bill, and the talk, within bounds.

-- +goose Up

-- A notice is what the carriers' rules ask for, such as the answer to HELP.
ALTER TABLE sends DROP CONSTRAINT sends_kind_check;
ALTER TABLE sends ADD CONSTRAINT sends_kind_check CHECK (kind IN ('reply', 'farewell', 'reminder', 'staff', 'notice'));

-- How many segments a text was charged as; null for what is not a text, or was not sent.
ALTER TABLE sends ADD COLUMN segments smallint CHECK (segments >= 0);
-- Messages out come in the order of time, so that a day's are found by a small index that
-- costs nothing to keep.
CREATE INDEX sends_day ON sends USING brin (queued_at) WITH (pages_per_range = 16);

-- Many new numbers of one prefix within an hour are a sign of traffic that somebody is
-- paid for.
CREATE INDEX conversations_prefix ON conversations (left(phone, 8), opened_at) WHERE phone IS NOT NULL;
