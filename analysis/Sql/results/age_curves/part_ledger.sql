-- One row per component, appliance type, family and days in service: parts of registered appliances whose service ended
-- at it, and how many of them by a failure. A part serves from the day its appliance was put in use, where that was
-- watched, or from its last failure, to its next failure or to the end of watching. The part an appliance came with into
-- the log does not count: it may have been fitted at any time.
with watched as (
    select
        u.unit_id,
        u.appliance_type,
        u.model_family,
        u.entry_days,
        u.exit_days,
        b.used_from > log.first_day as from_new
    from unit_ages as u
    join int_unit_births as b using (unit_id)
    cross join int_log_window as log
    where u.basis = 'register' and u.left_out is null
),
failed as (
    select
        w.*,
        f.component,
        f.age_days,
        lag(f.age_days) over of_part as before_days,
        lead(f.age_days) over of_part is null as is_last
    from unit_failures as f
    join watched as w using (unit_id)
    where f.age_days > w.entry_days and f.age_days <= w.exit_days
    window of_part as (partition by f.unit_id, f.component order by f.age_days)
),
ended as (
    select component, appliance_type, model_family, age_days - coalesce(before_days, entry_days) as days, 1 as parts, 1 as failures
    from failed
    where from_new or before_days is not null
    union all
    select component, appliance_type, model_family, exit_days - age_days, 1, 0
    from failed
    where is_last and exit_days > age_days
    union all
    -- appliances watched from new on which the component never failed: all of them, less those on which it did
    select c.component, w.appliance_type, w.model_family, w.exit_days - w.entry_days, 1, 0
    from (select distinct component, appliance_type from failed) as c
    join watched as w using (appliance_type)
    where w.from_new
    union all
    select component, appliance_type, model_family, exit_days - entry_days, -1, 0
    from failed
    where from_new and before_days is null
)
select
    component,
    appliance_type,
    model_family,
    days::integer as days,
    sum(parts)::bigint as parts,
    sum(failures)::bigint as failures
from ended
group by all
having sum(parts) <> 0 or sum(failures) <> 0
order by component, appliance_type, model_family, days
