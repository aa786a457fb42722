-- Photos themselves: made safe, shrunk, without what a camera hides in them.

-- +goose Up

ALTER TABLE photos
    ADD COLUMN why        text CHECK (why ~ '^[a-z_]+$'),      -- why it was refused or could not be had
    ADD COLUMN look       text CHECK (look IN ('too_dark', 'blurred', 'too_small', 'same')), -- why it may be of little use
    ADD COLUMN told       boolean NOT NULL DEFAULT false,      -- the customer heard of it
    ADD COLUMN sha256     bytea CHECK (length(sha256) = 32),   -- of the file as it came
    ADD COLUMN likeness   bigint,                              -- difference hash: near for two copies of one picture
    ADD COLUMN sharpness  real,
    ADD COLUMN light      smallint CHECK (light BETWEEN 0 AND 255),
    ADD COLUMN opened_at  timestamptz,
    ADD CONSTRAINT photos_why CHECK (state <> 'refused' OR why IS NOT NULL),
    ADD CONSTRAINT photos_kept CHECK (state <> 'kept' OR (sha256 IS NOT NULL AND opened_at IS NOT NULL)),
    ADD CONSTRAINT photos_look CHECK (look IS NULL OR state = 'kept');

-- Apart from what is known of them, so that lists stay light. The file as it came is kept
-- only until it is opened.
CREATE TABLE photo_files (
    photo_id bigint PRIMARY KEY REFERENCES photos (id) ON DELETE CASCADE,
    original bytea,
    jpeg     bytea,
    thumb    bytea,
    CHECK ((jpeg IS NULL) = (thumb IS NULL)),
    CHECK (original IS NULL OR jpeg IS NULL)
);
-- They are compressed already.
ALTER TABLE photo_files ALTER COLUMN original SET STORAGE EXTERNAL, ALTER COLUMN jpeg SET STORAGE EXTERNAL,
    ALTER COLUMN thumb SET STORAGE EXTERNAL;

-- As before, but a file that is no photo is not among the photos.
CREATE OR REPLACE VIEW lead_record AS
SELECT c.ref, jsonb_build_object(
    'version', 1,
    'ref', c.ref,
    'status', l.status,
    'qualified', l.qualified,
    'why_staff', to_jsonb(l.why_staff),
    'urgent', l.urgent,
    'after_hours', l.after_hours,
    'channel', c.channel,
    'language', coalesce(c.language, 'en'),
    'opened_at', iso_utc(c.opened_at),
    'ready_at', iso_utc(l.ready_at),
    'customer', jsonb_build_object('name', l.name, 'phone', l.phone, 'email', l.email),
    'place', jsonb_build_object('city', l.city, 'state', l.region, 'zip', l.zip, 'time_zone', l.time_zone),
    'use', l.use,
    'problem', to_jsonb(coalesce(l.problem, '{}')),
    'units', l.units,
    'photos', (
        SELECT coalesce(jsonb_agg(jsonb_build_object(
            'id', c.ref || '-' || m.n || '-' || p.k, 'of', p.of, 'from_message', m.n,
            'width', p.width, 'height', p.height) ORDER BY m.n, p.k), '[]')
        FROM numbered_messages m JOIN photos p ON p.message_id = m.id
        WHERE m.conversation_id = c.id AND p.state <> 'refused'),
    'facts', (
        SELECT coalesce(jsonb_agg(jsonb_build_object(
            'topic', f.topic, 'value', f.value, 'said', f.said, 'message', coalesce(f.message, 0))
            || CASE WHEN f.unit > 0 THEN jsonb_build_object('unit', f.unit) ELSE '{}' END
            ORDER BY f.seq), '[]')
        FROM facts f WHERE f.conversation_id = c.id),
    'messages', (
        SELECT coalesce(jsonb_agg(jsonb_build_object(
            'n', m.n, 'at', iso_utc(m.at), 'from', m.author, 'channel', m.channel, 'text', m.text)
            ORDER BY m.n), '[]')
        FROM numbered_messages m WHERE m.conversation_id = c.id)
) AS record
FROM conversations c JOIN leads l ON l.conversation_id = c.id;
