-- What goes out, and to whom nothing may go out.

-- +goose Up

-- Who must not be written to. A row is one refusal; it stands until it is lifted.
CREATE TABLE optouts (
    id         bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    channel    text NOT NULL CHECK (channel IN ('sms', 'email', 'terminal')),
    address    text NOT NULL CHECK (address <> '' AND length(address) <= 320),
    source     text NOT NULL CHECK (source IN ('keyword', 'talk', 'carrier', 'staff', 'link')),
    since      timestamptz NOT NULL,
    lifted_at  timestamptz CHECK (lifted_at >= since)
);
CREATE UNIQUE INDEX optouts_standing ON optouts (channel, address) WHERE lifted_at IS NULL;

-- The way of each message out. 'sending' stands from before the provider is called
-- until its answer is kept; 'held' was not sent because the customer opted out or wrote
-- first; 'unknown' means that nobody can tell whether it went.
CREATE TABLE sends (
    message_id      bigint PRIMARY KEY REFERENCES messages (id) ON DELETE CASCADE,
    conversation_id bigint NOT NULL, -- the message's
    channel         text NOT NULL CHECK (channel IN ('sms', 'email', 'terminal')),
    kind            text NOT NULL CHECK (kind IN ('reply', 'farewell', 'reminder', 'staff')),
    picture         text CHECK (picture ~ '^[a-z_]+$'), -- topic of a drawing to send along
    state           text NOT NULL DEFAULT 'queued' CHECK (state IN ('queued', 'sending', 'sent', 'failed', 'held', 'unknown')),
    queued_at       timestamptz NOT NULL DEFAULT clock_timestamp(),
    -- Queued: not to be tried before. Sending: whoever is at it is taken for dead after.
    due_at          timestamptz NOT NULL DEFAULT clock_timestamp(),
    claimed_at      timestamptz,                        -- since when the provider may have it
    attempts        integer NOT NULL DEFAULT 0 CHECK (attempts >= 0), -- calls to send
    checks          integer NOT NULL DEFAULT 0 CHECK (checks >= 0),   -- questions whether it went
    provider_id     text CHECK (provider_id <> ''),
    error_code      text CHECK (error_code <> ''),      -- of the last call
    finished_at     timestamptz,
    CHECK (state <> 'sending' OR claimed_at IS NOT NULL),
    CHECK ((state = 'sent') = (provider_id IS NOT NULL)),
    CHECK (state NOT IN ('failed', 'unknown', 'held') OR error_code IS NOT NULL),
    CHECK ((state IN ('sent', 'failed', 'held', 'unknown')) = (finished_at IS NOT NULL))
) WITH (fillfactor = 80);
-- By finished_at, not by state: a claim then changes no indexed column.
CREATE INDEX sends_open ON sends (conversation_id, message_id) WHERE finished_at IS NULL;
CREATE UNIQUE INDEX sends_provider ON sends (channel, provider_id) WHERE provider_id IS NOT NULL;

-- What the provider said later of a message that went out. They come in any order
-- and any number of times, even before the send itself is kept.
CREATE TABLE send_statuses (
    id          bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    channel     text NOT NULL CHECK (channel IN ('sms', 'email', 'terminal')),
    provider_id text NOT NULL CHECK (provider_id <> ''),
    status      text NOT NULL CHECK (status <> '' AND length(status) <= 64),
    error_code  text NOT NULL DEFAULT '' CHECK (length(error_code) <= 64),
    at          timestamptz NOT NULL,
    UNIQUE (channel, provider_id, status, error_code)
);

-- Something that staff should be told of a lead. Told once.
CREATE TABLE alerts (
    id              bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    conversation_id bigint NOT NULL REFERENCES conversations (id) ON DELETE CASCADE,
    reason          text NOT NULL CHECK (reason ~ '^[a-z_]+$'),
    at              timestamptz NOT NULL,
    told_at         timestamptz
);
CREATE INDEX alerts_untold ON alerts (at) WHERE told_at IS NULL;
