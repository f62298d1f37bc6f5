-- One row per case: a call that belongs to no earlier repair, with the calls that do. A call on the same unit belongs to a
-- finished repair if it came within the callback days, for the same complaint or for the same component. The case has the
-- component that its last diagnosis named: an earlier one was wrong, or its part did not hold.
with log as (
    from int_log_window
),
calls as (
    select
        j.job_id,
        j.unit_id,
        j.complaint_kind,
        j.opened_on,
        j.closed_on,
        case when j.closed_on <= log.last_day then j.main_component end as component,
        b.job_id is not null as comes_back
    from int_failure_calls as j
    cross join log
    left join (select distinct job_id from callbacks) as b using (job_id)
    where j.opened_on <= log.last_day
),
by_complaint as (
    select
        *,
        case
            when unit_id is null then job_id
            else last_value(case when not comes_back then job_id end ignore nulls) over (
                partition by unit_id, complaint_kind order by opened_on, job_id rows between unbounded preceding and current row
            )
        end as first_job
    from calls
),
complaints as (
    select
        first_job,
        unit_id,
        min(opened_on) as opened_on,
        max(closed_on) as closed_on,
        coalesce(
            arg_max(component, (component <> 'other_part', opened_on, job_id)) filter (where component <> 'none'),
            max(component)
        ) as component,
        min_by(component, (opened_on, job_id)) as first_component,
        count(*) as calls
    from by_complaint
    group by first_job, unit_id
),
marked as (
    select
        *,
        unit_id is not null and component not in ('none', 'other_part') and coalesce(
            opened_on - lag(closed_on) over (partition by unit_id, component order by opened_on, first_job) <= getvariable('callback_days')::integer,
            false
        ) as same_again
    from complaints
),
by_component as (
    select
        *,
        case
            when unit_id is null or component is null then first_job
            else last_value(case when not same_again then first_job end ignore nulls) over (
                partition by unit_id, component order by opened_on, first_job rows between unbounded preceding and current row
            )
        end as case_id
    from marked
)
select
    case_id as job_id,
    unit_id,
    min(opened_on) as opened_on,
    max(component) as component,
    min_by(first_component, (opened_on, first_job)) as first_component,
    sum(calls)::integer as calls
from by_component
group by case_id, unit_id
order by opened_on, case_id
