-- One row per job and build interval that the serial of its appliance allows, with the probability that it is right.
-- The owner's answer for one job holds for every job of that appliance and leaves one interval.
with answered as (
    select u.place, u.job_id, u.unit_id, u.opened_on, w.made_from, w.made_to
    from int_job_units as u
    join int_answered_build_dates as w on w.unit_key = coalesce(u.unit_id, u.job_id)
)
select place, job_id, unit_id, opened_on, made_from, made_to, candidates::integer as candidates, weight, 'serial' as basis
from int_build_candidates
anti join answered using (place)
union all
select place, job_id, unit_id, opened_on, made_from, made_to, 1, 1.0, 'reviewed'
from answered
