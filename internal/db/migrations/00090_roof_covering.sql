-- What covers the roof is a fact of its own.

-- +goose Up

-- One version back: the check that follows takes all that it took, and one topic more.
ALTER TABLE facts DROP CONSTRAINT facts_check1;
-- One version back: as above, all topics of the version before are in it.
ALTER TABLE facts ADD CONSTRAINT facts_topic_unit CHECK (CASE
    WHEN topic IN ('name', 'place', 'use', 'problem', 'photos', 'email', 'phone', 'confirm') THEN unit = 0
    WHEN topic IN ('count', 'style', 'outline', 'profile', 'frame_condition', 'want', 'plastic_size',
        'retainer_opening', 'retainer_outside', 'frame_inside', 'curb_outside', 'curb_inside',
        'curb_diagonals', 'curb_height', 'bulge_base', 'dome_rise', 'roof_slope', 'roof_covering', 'layers',
        'material', 'color', 'finish', 'impact_risk') THEN unit >= 1
    ELSE false END);
