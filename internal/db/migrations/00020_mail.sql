-- Mail, both ways: what came in and what became of it, and what goes out.

-- +goose Up

-- Each mail that was taken in, also those that nobody is answered for: what a program
-- wrote, what came back, what could not be read.
CREATE TABLE mails_in (
    id              bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    key             text NOT NULL UNIQUE CHECK (key ~ '^[0-9a-f]{64}$'), -- of Message-ID and content
    kind            text NOT NULL CHECK (kind IN ('message', 'auto', 'bounce', 'own', 'unreadable')),
    why             text CHECK (why ~ '^[a-z_]+$'),                  -- how it is known that no person wrote it
    mail_id         text CHECK (mail_id <> '' AND length(mail_id) <= 255), -- Message-ID without brackets
    sender          text CHECK (sender <> '' AND length(sender) <= 320),   -- lower case
    subject         text NOT NULL DEFAULT '' CHECK (length(subject) <= 1000),
    -- What an answer names: the thread, oldest first, this mail last.
    thread          text[] NOT NULL DEFAULT '{}' CHECK (cardinality(thread) <= 50),
    -- Does the sender's domain stand behind it? Unchecked: nobody was there to ask.
    standing        text NOT NULL DEFAULT 'unchecked' CHECK (standing IN ('proven', 'unproven', 'unchecked')),
    -- Pieces of an interleaved answer, each with what it answers.
    blocks          jsonb CHECK (jsonb_typeof(blocks) = 'array'),
    message_id      bigint UNIQUE REFERENCES messages (id) ON DELETE CASCADE,
    received_at     timestamptz NOT NULL DEFAULT clock_timestamp(),
    size            bigint NOT NULL CHECK (size >= 0),
    raw             bytea, -- as it came, cut where long; gone after a while
    CHECK ((kind = 'message') = (message_id IS NOT NULL)),
    CHECK (kind <> 'auto' OR why IS NOT NULL),
    CHECK (blocks IS NULL OR kind = 'message')
);
CREATE INDEX mails_in_raw ON mails_in (received_at) WHERE raw IS NOT NULL;

-- A mail on its way out. It is written once, so that every try is the same mail.
CREATE TABLE mails_out (
    message_id bigint PRIMARY KEY REFERENCES messages (id) ON DELETE CASCADE,
    mail_id    text NOT NULL UNIQUE CHECK (mail_id <> '' AND length(mail_id) <= 255),
    raw        bytea,                     -- gone once it is known what became of it
    begun      boolean NOT NULL DEFAULT false -- the server may have it
);

-- Keys for links that nobody can guess; made at first use, the same for all processes.
CREATE TABLE link_keys (
    name text PRIMARY KEY CHECK (name ~ '^[a-z_]+$'),
    key  bytea NOT NULL CHECK (length(key) = 32)
);
