-- What is left of talks that are erased, on request or by age: how many there were.

-- +goose Up

-- One row for each talk, but those that were joined into another: how far it came.
CREATE VIEW talk_steps AS
SELECT c.id, c.channel, c.opened_at, l.ready_at, l.after_hours,
    EXISTS (SELECT FROM facts f WHERE f.conversation_id = c.id AND f.topic IN ('plastic_size', 'retainer_opening', 'retainer_outside',
        'frame_inside', 'curb_outside', 'curb_inside', 'bulge_base') AND NOT f.undone) AS measured,
    coalesce(h.deeds && ARRAY['took', 'took_by_text'], false) OR l.status IN ('picked_up', 'quoted', 'ordered', 'declined') AS taken,
    coalesce(h.deeds @> ARRAY['marked:quoted'], false) OR l.status IN ('quoted', 'ordered') AS quoted,
    l.status = 'ordered' AS ordered
FROM conversations c JOIN leads l ON l.conversation_id = c.id
LEFT JOIN LATERAL (SELECT array_agg(deed || coalesce(':' || (detail ->> 'status'), '')) AS deeds FROM staff_history s
    WHERE s.conversation_id = c.id AND s.undone_by IS NULL AND s.deed IN ('took', 'took_by_text', 'marked')) h ON true
WHERE NOT EXISTS (SELECT FROM lead_merges m WHERE m.from_id = c.id);

CREATE TABLE gone_talks (
    week        date NOT NULL, -- its Monday, in the shop's zone
    channel     text NOT NULL CHECK (channel IN ('sms', 'email', 'terminal')),
    begun       integer NOT NULL,
    measured    integer NOT NULL,
    ready       integer NOT NULL,
    taken       integer NOT NULL,
    quoted      integer NOT NULL,
    ordered     integer NOT NULL,
    after_hours integer NOT NULL,
    PRIMARY KEY (week, channel)
);
