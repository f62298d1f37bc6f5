-- One row per job that counts as a failure: preventive visits, installations and inspections are visits, not failures.
-- A job whose reason is not told counts. Queries that answer from a store alone state the same condition.
-- materialize: view
select *
from jobs
where coalesce(visit_reason, 'failure') = 'failure'
