-- The people of the shop: who they are, which lead is in whose hands, what they did, and
-- what they need to find a lead among many.

-- +goose Up

CREATE TABLE staff (
    id            bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    login         text NOT NULL UNIQUE CHECK (login ~ '^[a-z0-9][a-z0-9._@+-]{1,63}$'),
    name          text NOT NULL CHECK (name <> '' AND length(name) <= 100),
    role          text NOT NULL CHECK (role IN ('staff', 'owner')),
    password_hash text NOT NULL CHECK (password_hash LIKE '$argon2id$%'),
    -- Given by somebody else: the first log-in must choose another.
    one_time      boolean NOT NULL DEFAULT false,
    email         text CHECK (email ~ '^[^@[:space:]]+@[^@[:space:]]+$'), -- for alerts
    phone         text UNIQUE CHECK (phone ~ '^\+[1-9][0-9]{6,14}$'),     -- E.164, for alerts and "take R7KQ4"
    mail_alerts   boolean NOT NULL DEFAULT false,
    text_alerts   boolean NOT NULL DEFAULT false,
    -- A session that began before is over: after a new password, or being let go.
    sessions_from timestamptz NOT NULL DEFAULT clock_timestamp(),
    left_at       timestamptz, -- no longer with the shop
    created_at    timestamptz NOT NULL DEFAULT clock_timestamp(),
    CHECK (NOT mail_alerts OR email IS NOT NULL),
    CHECK (NOT text_alerts OR phone IS NOT NULL)
);

-- Sessions of the staff's page, in the form that its session store wants. Tokens are hashed.
CREATE TABLE sessions (
    token  text PRIMARY KEY,
    data   bytea NOT NULL,
    expiry timestamptz NOT NULL
);
CREATE INDEX sessions_expiry ON sessions (expiry);

-- Each try to log in, for as long as it matters to the next ones.
CREATE TABLE staff_logins (
    id      bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    login   text NOT NULL CHECK (length(login) <= 64),
    address text NOT NULL CHECK (length(address) <= 64),
    ok      boolean NOT NULL,
    at      timestamptz NOT NULL
);
CREATE INDEX staff_logins_login ON staff_logins (login, at);
CREATE INDEX staff_logins_address ON staff_logins (address, at);

-- In whose hands a lead is: one person at a time.
CREATE TABLE lead_hands (
    conversation_id bigint PRIMARY KEY REFERENCES conversations (id) ON DELETE CASCADE,
    staff_id        bigint NOT NULL REFERENCES staff (id),
    since           timestamptz NOT NULL
);
CREATE INDEX lead_hands_staff ON lead_hands (staff_id);

-- What people of staff did and saw. Nothing is erased but with the person it is about;
-- what was undone says by which entry.
CREATE TABLE staff_history (
    id              bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    at              timestamptz NOT NULL,
    staff_id        bigint REFERENCES staff (id), -- null: the program itself
    conversation_id bigint REFERENCES conversations (id) ON DELETE CASCADE,
    deed            text NOT NULL CHECK (deed ~ '^[a-z_]+$'),
    detail          jsonb NOT NULL DEFAULT '{}' CHECK (jsonb_typeof(detail) = 'object'),
    undone_by       bigint REFERENCES staff_history (id)
);
CREATE INDEX staff_history_lead ON staff_history (conversation_id, id);
CREATE INDEX staff_history_at ON staff_history (at);

-- A lead that was joined with another of the same person.
CREATE TABLE lead_merges (
    from_id bigint PRIMARY KEY REFERENCES conversations (id) ON DELETE CASCADE,
    into_id bigint NOT NULL REFERENCES conversations (id) ON DELETE CASCADE,
    at      timestamptz NOT NULL,
    CHECK (from_id <> into_id)
);
CREATE INDEX lead_merges_into ON lead_merges (into_id);

-- The words by which a lead is found: name, town, state and ZIP word by word; the whole
-- number and its end, the mail address and sizes ("25.5x49.5") in one piece. Only
-- functions that never change are used, since a column rests on it.
-- +goose StatementBegin
CREATE FUNCTION lead_words(name text, phone text, email text, city text, region text, zip text, units jsonb)
RETURNS tsvector LANGUAGE sql IMMUTABLE PARALLEL SAFE AS $$
    SELECT to_tsvector('simple'::regconfig, concat_ws(' ', left(name, 200), left(city, 100), region, zip))
        || array_to_tsvector(array_remove(array_remove(ARRAY[
            right(phone, -1), right(phone, 10), right(phone, 7), right(phone, 4), lower(left(email, 320))]
            || ARRAY(SELECT concat_ws('x', s ->> 'width_in', s ->> 'length_in', s ->> 'diameter_in')
                FROM jsonb_path_query(units, 'lax $[*].keyvalue().value ? (@.type() == "object" && (exists(@.width_in) || exists(@.diameter_in)))') s
                LIMIT 200), NULL), ''))
$$;
-- +goose StatementEnd

ALTER TABLE leads ADD COLUMN words tsvector GENERATED ALWAYS AS (lead_words(name, phone, email, city, region, zip, units)) STORED;
CREATE INDEX leads_words ON leads USING gin (words);
CREATE INDEX leads_by_status ON leads (status, conversation_id);

-- Whoever looks at a page hears of what changes. The same news twice in one transaction
-- is told once.
-- +goose StatementBegin
CREATE FUNCTION lead_changed() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    PERFORM pg_notify('lead_changed', coalesce(NEW.conversation_id, OLD.conversation_id)::text);
    RETURN NULL;
END
$$;
-- +goose StatementEnd
-- Not for every turn of a talk that the assistant leads: news takes a lock for the length
-- of a commit, and nobody waits for these.
CREATE TRIGGER lead_changed AFTER UPDATE ON leads FOR EACH ROW
    WHEN (NEW.status <> 'open' OR OLD.status <> 'open' OR NEW.urgent) EXECUTE FUNCTION lead_changed();
CREATE TRIGGER lead_changed AFTER INSERT OR UPDATE OR DELETE ON lead_hands FOR EACH ROW EXECUTE FUNCTION lead_changed();

-- For the figures of a week.
CREATE INDEX conversations_opened ON conversations (opened_at);
