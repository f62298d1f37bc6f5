-- One row per job that counts as a failure: preventive visits, installations and inspections are visits, not failures.
-- A job whose reason is not told counts.
-- materialize: view
select *
from jobs
where coalesce(visit_reason, 'failure') = 'failure'
