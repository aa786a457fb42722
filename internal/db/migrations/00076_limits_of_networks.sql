-- Many new addresses of one domain, like many new numbers of one prefix; and what a day took.

-- +goose Up

CREATE INDEX conversations_domain ON conversations (split_part(email, '@', 2), opened_at) WHERE email IS NOT NULL;
-- Photos are opened in the order of time: a day's are found by a small index.
CREATE INDEX photos_day ON photos USING brin (opened_at) WITH (pages_per_range = 16);
