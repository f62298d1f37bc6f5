-- One row per job: what was known on its day about the build date of its appliance, from this call and earlier ones.
with told as (
    select
        j.job_id, u.unit_id, j.opened_on, j.source_order, j.source_line,
        j.made_on_from, j.made_on_to, j.serial_candidates, j.purchased_on,
        j.opened_on - (j.age_stated_years * 365.25)::integer as stated_on,
        m.appliance_type, m.first_made, m.last_made
    from job_rows as j
    join job_units as u using (job_id)
    join job_models as m using (job_id)
),
carried as (
    select
        *,
        last_value(serial_candidates ignore nulls) over so_far as serial_told,
        last_value(purchased_on ignore nulls) over so_far as purchase_told,
        last_value(made_on_from ignore nulls) over so_far as made_from_told,
        last_value(made_on_to ignore nulls) over so_far as made_to_told,
        last_value(stated_on ignore nulls) over so_far as stated_told
    from told
    where unit_id is not null
    window so_far as (partition by unit_id order by opened_on, job_id rows between unbounded preceding and current row)
)
select
    job_id, unit_id, opened_on, appliance_type, first_made, last_made,
    serial_told as serial_candidates,
    purchase_told as purchased_on,
    made_from_told as made_on_from,
    made_to_told as made_on_to,
    stated_told as stated_on
from carried
union all
select
    job_id, unit_id, opened_on, appliance_type, first_made, last_made,
    serial_candidates, purchased_on, made_on_from, made_on_to, stated_on
from told
where unit_id is null
