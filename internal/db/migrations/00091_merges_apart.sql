-- Two leads that staff joined by mistake can be taken apart again.

-- +goose Up

-- How both talks stood before they were joined; null where that can't be undone. It goes
-- with either of the talks.
ALTER TABLE lead_merges ADD COLUMN IF NOT EXISTS before jsonb CHECK (jsonb_typeof(before) = 'object');
