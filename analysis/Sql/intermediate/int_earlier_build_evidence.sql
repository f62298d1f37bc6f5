-- One row per job of an appliance with several jobs: what its calls up to this one said about when it was built.
-- Filtered by hash first: most appliances have one job, and the rows of a window are sorted.
with repeated as (
    select hash(unit_id) as mark from int_job_units where unit_id is not null group by hash(unit_id) having count(*) > 1
)
select
    place,
    opened_on,
    last_value(serial_candidates ignore nulls) over so_far as serial_candidates,
    last_value(purchased_on ignore nulls) over so_far as purchased_on,
    last_value(made_on_from ignore nulls) over so_far as made_on_from,
    last_value(made_on_to ignore nulls) over so_far as made_on_to,
    last_value(stated_on ignore nulls) over so_far as stated_on
from int_job_units
where unit_id is not null and hash(unit_id) in (from repeated)
window so_far as (partition by unit_id order by opened_on, job_id rows between unbounded preceding and current row)
