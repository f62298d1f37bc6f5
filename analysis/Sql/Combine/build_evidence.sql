-- One row per job: what was known on its day about the build date of its appliance, from this call and earlier ones.
select
    * exclude (serial_candidates, purchased_on, made_on_from, made_on_to, stated_on),
    last_value(serial_candidates ignore nulls) over so_far as serial_candidates,
    last_value(purchased_on ignore nulls) over so_far as purchased_on,
    last_value(made_on_from ignore nulls) over so_far as made_on_from,
    last_value(made_on_to ignore nulls) over so_far as made_on_to,
    last_value(stated_on ignore nulls) over so_far as stated_on
from job_units
where unit_id is not null
window so_far as (partition by unit_id order by opened_on, job_id rows between unbounded preceding and current row)
union all by name
from job_units
where unit_id is null
