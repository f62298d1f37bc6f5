-- One row: the days of the early window, the jobs on which the part was fitted and followed for that long, and those of
-- them whose appliance was fitted with the same component again within it.
with fitted as (
    select distinct job_id, component
    from int_fitted_parts
    where part_number = $number
),
followed as (
    select p.again_days
    from int_part_followups as p
    semi join fitted using (job_id, component)
    cross join int_early_window as early
    where p.followed_days >= early.days
)
select
    early.days,
    (select count(*) from followed) as followed,
    (select count(*) from followed where again_days <= early.days) as failed
from int_early_window as early
