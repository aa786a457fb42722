-- The lead record of docs/contract.md as a view: stable, for the owner's own tools.
--
--     SELECT record FROM lead_record WHERE ref = 'R7KQ4';

-- +goose Up

-- RFC 3339 in UTC, without trailing zeros in the fraction: as Go writes a time.
-- +goose StatementBegin
CREATE FUNCTION iso_utc(t timestamptz) RETURNS text LANGUAGE sql IMMUTABLE PARALLEL SAFE AS $$
    SELECT to_char(t AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS')
        || rtrim(rtrim(to_char(t AT TIME ZONE 'UTC', '.US'), '0'), '.') || 'Z'
$$;
-- +goose StatementEnd

-- Messages with the number that they have, or will have with the next turn.
CREATE VIEW numbered_messages AS
    SELECT m.id, m.conversation_id, m.n, m.author, m.channel, m.text, m.at
    FROM messages m WHERE m.n IS NOT NULL
    UNION ALL
    SELECT m.id, m.conversation_id,
        c.last_n + row_number() OVER (PARTITION BY m.conversation_id ORDER BY m.at, m.id)::integer,
        m.author, m.channel, m.text, m.at
    FROM messages m JOIN conversations c ON c.id = m.conversation_id
    WHERE m.direction = 'in' AND m.handled_at IS NULL;

CREATE VIEW lead_record AS
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
    'problem', to_jsonb(l.problem),
    'units', l.units,
    'photos', (
        SELECT coalesce(jsonb_agg(jsonb_build_object(
            'id', c.ref || '-' || m.n || '-' || p.k, 'of', p.of, 'from_message', m.n,
            'width', p.width, 'height', p.height) ORDER BY m.n, p.k), '[]')
        FROM numbered_messages m JOIN photos p ON p.message_id = m.id
        WHERE m.conversation_id = c.id),
    'facts', (
        SELECT coalesce(jsonb_agg(jsonb_build_object(
            'topic', f.topic, 'value', f.value, 'said', f.said, 'message', f.message)
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

COMMENT ON VIEW lead_record IS 'One lead a row: ref, and record, the JSON of the lead record (docs/contract.md). Stable.';
COMMENT ON VIEW numbered_messages IS 'Messages with their place in the talk; of those that no turn has taken yet, the place that they will have.';
