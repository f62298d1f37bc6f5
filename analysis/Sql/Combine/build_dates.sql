-- One row per job and build interval that its appliance's serial may mean, with the chance that it is the right one.
-- An answer of the owner for one job holds for every job of that appliance and leaves one interval.
with answered as (
    select e.job_id, e.unit_id, w.made_from, w.made_to
    from build_evidence as e
    join answered_builds as w on w.unit_key = coalesce(e.unit_id, e.job_id)
)
select job_id, unit_id, made_from, made_to, candidates::integer as candidates, weight, 'serial' as basis
from build_candidates
anti join answered using (job_id)
union all
select job_id, unit_id, made_from, made_to, 1, 1.0, 'reviewed'
from answered
order by job_id, made_from
