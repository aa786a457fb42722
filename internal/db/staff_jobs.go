package db

import "context"

// CountJobs says how many jobs of the queue are in each state, up to a hundred thousand.
func CountJobs(ctx context.Context, c Conn) ([]Tally, error) {
	const sql = `SELECT state::text, count(*)::int FROM (SELECT state FROM river_job LIMIT 100000) j GROUP BY state ORDER BY state`
	return tallies(ctx, c, sql)
}
