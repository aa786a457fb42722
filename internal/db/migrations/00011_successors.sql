-- A talk that begins after an earlier one of the same customer has ended takes over what
-- is still true. Such facts name no message of their own talk, but the talk they are from.

-- +goose Up

ALTER TABLE facts ADD COLUMN carried_from text REFERENCES conversations (ref) ON DELETE SET NULL;
ALTER TABLE facts DROP CONSTRAINT facts_check;
-- Not the reference but a mark: the earlier talk may be erased one day.
ALTER TABLE facts ADD COLUMN carried boolean NOT NULL DEFAULT false;
ALTER TABLE facts ADD CONSTRAINT facts_have_a_message CHECK (by = 'staff' OR message IS NOT NULL OR carried);
ALTER TABLE facts ADD CONSTRAINT facts_carried_from CHECK (carried_from IS NULL OR carried);

-- As before, but a fact without a message of its own says message 0.
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
        WHERE m.conversation_id = c.id),
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
