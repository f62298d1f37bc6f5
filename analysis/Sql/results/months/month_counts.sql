-- One row per month from the first call to the last day of the data: its calls and what is known of them. Months
-- without a call have their row. What the log never tells is unknown: a log without visits has jobs that ordered a part and
-- so took two, but none that took one.
with told as (
    select count(visits) > 0 as visits from jobs
),
months as (
    select unnest(generate_series(date_trunc('month', first_day), date_trunc('month', last_day), interval 1 month))::date as month
    from int_log_window
),
calls as (
    select date_trunc('month', j.opened_on)::date as month, coalesce(j.visit_reason, 'failure') = 'failure' as is_failure, j.*
    from jobs as j
    cross join int_log_window as log
    where j.opened_on <= log.last_day
)
select
    m.month,
    count(c.job_id) as calls,
    count(c.job_id) filter (where c.job_id is not null and coalesce(c.closing_basis = 'open', c.closed_on is null)) as still_open,
    count(c.job_id) filter (where c.closing_basis = 'unknown') as end_not_told,
    count(*) filter (where c.closed_on is not null and c.first_visit_done is not null and told.visits) as visits_known,
    count(*) filter (where c.closed_on is not null and c.first_visit_done and told.visits) as first_visit_done,
    count(c.main_component) filter (where c.is_failure) as cause_known,
    count(*) filter (where c.main_component = 'none' and c.is_failure) as no_part,
    count(c.job_id) filter (where c.model_family is null) as family_unknown,
    count(c.job_id) filter (where c.age_years is null) as age_unknown,
    count(*) filter (where c.complaint_kind in ('none', 'other')) as complaint_unknown
from months as m
cross join told
left join calls as c using (month)
group by m.month
order by m.month
