-- The talk with a customer, and the lead that comes of it. Every state is a text
-- column with its allowed values, and what must not exist is refused here, so that no
-- program can write it.

-- +goose Up

-- A talk: one customer, one matter, over one or more channels.
CREATE TABLE conversations (
    id          bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    ref         text NOT NULL UNIQUE CHECK (ref ~ '^[CDFGHJKMNPQRTWXY34679]{5}$'),
    channel     text NOT NULL CHECK (channel IN ('sms', 'email', 'terminal')), -- on which it began
    phone       text CHECK (phone ~ '^\+[1-9][0-9]{6,14}$'),                   -- E.164, the number that texted
    email       text CHECK (email ~ '^[^@[:space:]]+@[^@[:space:]]+$'),         -- the address that wrote
    language    text CHECK (language ~ '^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$'),     -- null until the first turn
    state       text NOT NULL DEFAULT 'opening' CHECK (state IN ('opening', 'introducing', 'identifying',
                    'measuring', 'rechecking', 'choosing', 'picturing', 'confirming', 'handed_over',
                    'with_staff', 'lapsed', 'silenced')),
    memory      jsonb NOT NULL DEFAULT '{}' CHECK (jsonb_typeof(memory) = 'object'),
    last_n      integer NOT NULL DEFAULT 0 CHECK (last_n >= 0), -- number of the newest numbered message
    wake_at     timestamptz,                                    -- when to speak up if nothing comes in
    opened_at   timestamptz NOT NULL,
    CHECK (channel <> 'sms' OR phone IS NOT NULL),
    CHECK (channel <> 'email' OR email IS NOT NULL)
) WITH (fillfactor = 70);
CREATE INDEX conversations_wake ON conversations (wake_at) WHERE wake_at IS NOT NULL;

-- The talk that the next message from an address joins.
CREATE TABLE addresses (
    channel         text NOT NULL CHECK (channel IN ('sms', 'email', 'terminal')),
    address         text NOT NULL CHECK (address <> '' AND length(address) <= 320),
    conversation_id bigint NOT NULL REFERENCES conversations (id) ON DELETE CASCADE,
    PRIMARY KEY (channel, address)
);
CREATE INDEX addresses_conversation ON addresses (conversation_id);

-- What was said, both ways. A message that came in gets its number with the turn that
-- takes it; one that goes out, with the turn that makes it.
CREATE TABLE messages (
    id              bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    conversation_id bigint NOT NULL REFERENCES conversations (id) ON DELETE CASCADE,
    n               integer CHECK (n >= 1),
    direction       text NOT NULL CHECK (direction IN ('in', 'out')),
    author          text NOT NULL CHECK (author IN ('customer', 'bot', 'staff')),
    channel         text NOT NULL CHECK (channel IN ('sms', 'email', 'terminal')),
    address         text NOT NULL CHECK (address <> '' AND length(address) <= 320), -- the customer's
    provider_id     text CHECK (provider_id <> ''),  -- of a message that came in
    text            text NOT NULL CHECK (length(text) <= 200000),
    photos          integer NOT NULL DEFAULT 0 CHECK (photos BETWEEN 0 AND 1000),
    at              timestamptz NOT NULL,            -- when it was written, as far as is known
    received_at     timestamptz NOT NULL DEFAULT clock_timestamp(),
    handled_at      timestamptz,                     -- when a turn took it
    UNIQUE (conversation_id, n),
    CHECK ((direction = 'in') = (author = 'customer')),
    CHECK ((direction = 'in') = (provider_id IS NOT NULL)),
    CHECK (direction = 'in' OR (n IS NOT NULL AND handled_at IS NULL)),
    CHECK ((handled_at IS NULL) OR n IS NOT NULL)
);
-- The same message twice is one message.
CREATE UNIQUE INDEX messages_provider ON messages (channel, provider_id) WHERE provider_id IS NOT NULL;
CREATE INDEX messages_unhandled ON messages (conversation_id) WHERE direction = 'in' AND handled_at IS NULL;

-- Each photo that came with a message: first only where it can be fetched.
CREATE TABLE photos (
    id           bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    message_id   bigint NOT NULL REFERENCES messages (id) ON DELETE CASCADE,
    k            integer NOT NULL CHECK (k >= 1), -- place in its message
    source       text NOT NULL,                   -- where the channel keeps it
    content_type text NOT NULL DEFAULT '',        -- as the sender said
    of           text CHECK (of ~ '^[a-z_]+$'),   -- the topic that it was asked for
    state        text NOT NULL DEFAULT 'referenced' CHECK (state IN ('referenced', 'kept', 'refused', 'gone')),
    width        integer CHECK (width > 0),
    height       integer CHECK (height > 0),
    UNIQUE (message_id, k),
    CHECK ((width IS NULL) = (height IS NULL)),
    CHECK (state <> 'kept' OR width IS NOT NULL)
);
CREATE INDEX photos_to_fetch ON photos (id) WHERE state = 'referenced';

-- The ledger: every fact with the words and the message that it came from. Nothing is
-- erased; a later one of the same topic and unit replaces an earlier.
CREATE TABLE facts (
    conversation_id bigint NOT NULL REFERENCES conversations (id) ON DELETE CASCADE,
    seq             integer NOT NULL CHECK (seq >= 1), -- place in the ledger
    topic           text NOT NULL,
    unit            integer NOT NULL CHECK (unit >= 0),
    value           jsonb NOT NULL CHECK (jsonb_typeof(value) <> 'null'),
    resolution_nm   bigint NOT NULL DEFAULT 0 CHECK (resolution_nm >= 0), -- how finely the tape was read; 0: not known
    said            text NOT NULL,
    message         integer, -- n of its message
    by              text NOT NULL CHECK (by IN ('customer', 'staff')),
    undone          boolean NOT NULL DEFAULT false,
    PRIMARY KEY (conversation_id, seq),
    FOREIGN KEY (conversation_id, message) REFERENCES messages (conversation_id, n) ON DELETE CASCADE,
    CHECK (by = 'staff' OR message IS NOT NULL),
    CHECK (CASE
        WHEN topic IN ('name', 'place', 'use', 'problem', 'photos', 'email', 'phone', 'confirm') THEN unit = 0
        WHEN topic IN ('count', 'style', 'outline', 'profile', 'frame_condition', 'want', 'plastic_size',
            'retainer_opening', 'retainer_outside', 'frame_inside', 'curb_outside', 'curb_inside',
            'curb_diagonals', 'curb_height', 'bulge_base', 'dome_rise', 'roof_slope', 'layers', 'material',
            'color', 'finish', 'impact_risk') THEN unit >= 1
        ELSE false END)
);

-- The lead as it stands, for staff: one for each talk.
CREATE TABLE leads (
    conversation_id bigint PRIMARY KEY REFERENCES conversations (id) ON DELETE CASCADE,
    status          text NOT NULL DEFAULT 'open' CHECK (status IN ('open', 'ready', 'needs_person',
                        'picked_up', 'quoted', 'ordered', 'declined', 'closed')),
    qualified       boolean NOT NULL DEFAULT false,
    why_staff       text[] NOT NULL DEFAULT '{}' CHECK (array_position(why_staff, NULL) IS NULL),
    urgent          boolean NOT NULL DEFAULT false,
    after_hours     boolean NOT NULL DEFAULT false,
    ready_at        timestamptz,
    name            text CHECK (name <> ''),
    phone           text CHECK (phone <> ''),
    email           text CHECK (email <> ''),
    city            text CHECK (city <> ''),
    region          text CHECK (region ~ '^[A-Z]{2}$'), -- the state's postal code
    zip             text CHECK (zip ~ '^[0-9]{5}$'),
    time_zone       text CHECK (time_zone <> ''),
    use             text CHECK (use IN ('home', 'commercial', 'manufactured_home', 'rv', 'outbuilding', 'other')),
    problem         text[] CHECK (problem <@ ARRAY['cracked', 'leaking', 'hole_open', 'hazy', 'storm', 'other']),
    units           jsonb NOT NULL DEFAULT '[]' CHECK (jsonb_typeof(units) = 'array'),
    waiting_since   timestamptz, -- since when it waits for a person
    updated_at      timestamptz NOT NULL DEFAULT clock_timestamp(),
    CHECK ((waiting_since IS NOT NULL) = (status IN ('ready', 'needs_person'))),
    CHECK (status <> 'ready' OR ready_at IS NOT NULL),
    CHECK (status <> 'needs_person' OR cardinality(why_staff) > 0)
) WITH (fillfactor = 70);
-- Without updated_at: most turns then change no indexed column.
CREATE INDEX leads_waiting ON leads (urgent DESC, waiting_since) WHERE waiting_since IS NOT NULL;
CREATE INDEX leads_status ON leads (status);
