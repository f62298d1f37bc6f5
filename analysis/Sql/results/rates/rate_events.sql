-- One row per basis and event that counts for it: every failure call for its share of calls; for a rate every case (a
-- repair with the calls that came back to it) on a watched unit, on the day of its first call. Basis register_untold: cases
-- that may be about a listed machine, with the chance that they are.
with log as (
    from observation
),
calls as (
    select
        j.job_id,
        j.unit_id,
        j.opened_on,
        date_trunc('month', j.opened_on)::date as month,
        coalesce(j.appliance_type, 'unknown') as appliance_type,
        coalesce(j.brand, 'unknown') as brand,
        coalesce(j.model_family, 'unknown') as model_family,
        coalesce(j.opened_on - b.born_on, (j.age_years * 365.25)::integer) as age_days,
        j.complaint_kind,
        j.main_component as component
    from int_failure_calls as j
    cross join log
    left join int_unit_births as b using (unit_id)
    where j.opened_on between log.first_day and log.last_day
),
shares as (
    select
        'share_of_calls' as basis, job_id, month, appliance_type, brand, model_family, age_days, complaint_kind, component
    from calls
),
rates as (
    select
        w.basis, c.job_id, c.month, w.appliance_type, w.brand, w.model_family,
        (c.opened_on - w.born_on)::integer as age_days, c.complaint_kind, cases.component
    from calls as c
    join cases using (job_id)
    join unit_windows as w
        on c.unit_id = w.unit_id and c.opened_on >= w.starts_on and c.opened_on < w.ends_before
),
untold as (
    select
        'register_untold' as basis,
        f.job_id,
        date_trunc('month', f.opened_on)::date as month,
        f.appliance_type,
        coalesce(f.brand, 'unknown') as brand,
        coalesce(f.model_family, 'unknown') as model_family,
        f.age_days,
        f.complaint_kind,
        f.component,
        f.chance
    from untold_failures as f
    cross join log
    where f.opened_on between log.first_day and log.last_day
)
select
    e.basis,
    e.job_id,
    e.month,
    e.appliance_type,
    e.brand,
    e.model_family,
    coalesce(b.age_band, 'unknown') as age_band,
    e.complaint_kind,
    e.component,
    coalesce(e.chance, 1::decimal(9, 6)) as chance
from (from shares union all from rates union all by name from untold) as e
left join age_bands as b
    on e.age_days >= b.from_days and (b.to_days is null or e.age_days < b.to_days)
