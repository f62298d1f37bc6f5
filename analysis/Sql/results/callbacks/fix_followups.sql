-- One row per finished repair of a known unit: the next calls on the same unit, and how long it was followed.
with fixes as (
    select
        j.job_id,
        j.unit_id,
        j.opened_on,
        j.closed_on,
        j.technician,
        coalesce(j.appliance_type, 'unknown') as appliance_type,
        coalesce(j.model_family, 'unknown') as model_family,
        j.complaint_kind,
        j.complaint_kind not in ('none', 'other') as complaint_told,
        coalesce(j.main_component, 'unknown') as component,
        least(log.last_day, u.removed_on) - j.closed_on as followed_days
    from int_failure_calls as j
    cross join int_log_window as log
    left join units as u using (unit_id)
    where j.unit_id is not null
        and j.closed_on <= log.last_day
        and j.outcome in ('fixed_with_part', 'fixed_without_part', 'fixed')
),
later as (
    select
        f.job_id,
        min_by(n.job_id, (n.opened_on, n.job_id)) as next_job,
        min(n.opened_on) as next_opened_on,
        min_by(n.job_id, (n.opened_on, n.job_id)) filter (where n.complaint_kind = f.complaint_kind and f.complaint_told) as next_same_job,
        min(n.opened_on) filter (where n.complaint_kind = f.complaint_kind and f.complaint_told) as next_same_opened_on
    from fixes as f
    join int_failure_calls as n
        on f.unit_id = n.unit_id
        and f.job_id <> n.job_id
        and n.opened_on >= f.closed_on
        and n.opened_on > f.opened_on
    cross join int_log_window as log
    where n.opened_on <= log.last_day
    group by f.job_id
)
select
    f.job_id,
    f.unit_id,
    f.closed_on,
    date_trunc('month', f.closed_on)::date as month,
    f.technician,
    f.appliance_type,
    f.model_family,
    f.complaint_kind,
    f.complaint_told,
    f.component,
    greatest(f.followed_days, 0)::integer as followed_days,
    l.next_job,
    (l.next_opened_on - f.closed_on)::integer as next_days,
    l.next_same_job,
    (l.next_same_opened_on - f.closed_on)::integer as next_same_days
from fixes as f
left join later as l using (job_id)
order by f.closed_on, f.job_id
