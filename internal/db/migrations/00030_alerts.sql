-- Telling people of staff, and the owner's other systems, what becomes of leads.

-- +goose Up

-- Who was told what. Nobody is told the same thing twice.
CREATE TABLE staff_told (
    staff_id        bigint NOT NULL REFERENCES staff (id) ON DELETE CASCADE,
    about           text NOT NULL CHECK (about <> '' AND length(about) <= 100),
    conversation_id bigint REFERENCES conversations (id) ON DELETE CASCADE, -- null: it is about no lead
    at              timestamptz NOT NULL,
    PRIMARY KEY (staff_id, about)
);
CREATE INDEX staff_told_lead ON staff_told (conversation_id);

-- Each step of a lead, for the owner's other systems.
CREATE TABLE lead_events (
    id              bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    conversation_id bigint NOT NULL REFERENCES conversations (id) ON DELETE CASCADE,
    event           text NOT NULL CHECK (event ~ '^[a-z_]+$'), -- the status that it came to
    at              timestamptz NOT NULL DEFAULT clock_timestamp(),
    queued_at       timestamptz -- when a job was asked to tell it
);
CREATE INDEX lead_events_new ON lead_events (id) WHERE queued_at IS NULL;
CREATE INDEX lead_events_lead ON lead_events (conversation_id);

-- +goose StatementBegin
CREATE FUNCTION lead_stepped() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    INSERT INTO lead_events (conversation_id, event) VALUES (NEW.conversation_id, NEW.status);
    RETURN NULL;
END
$$;
-- +goose StatementEnd
CREATE TRIGGER lead_stepped AFTER UPDATE ON leads FOR EACH ROW WHEN (NEW.status <> OLD.status) EXECUTE FUNCTION lead_stepped();
