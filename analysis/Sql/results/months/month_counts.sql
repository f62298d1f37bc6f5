-- One row per month from the first call to the last day of the data: its calls and what is known of them. Months without a call have their row.
with log as (
    select min(opened_on) as first_day, coalesce(getvariable('as_of')::date, max(opened_on)) as last_day
    from jobs
),

months as (
    select month::date as month
    from log, unnest(generate_series(date_trunc('month', log.first_day), date_trunc('month', log.last_day), interval 1 month)) as m(month)
),

calls as (
    select date_trunc('month', opened_on)::date as month, *
    from jobs
    where opened_on <= coalesce(getvariable('as_of')::date, opened_on)
)

select
    m.month,
    count(c.job_id) as calls,
    count(c.job_id) filter (where c.closed_on is null) as still_open,
    count(*) filter (where c.closed_on is not null and c.first_visit_done is not null) as visits_known,
    count(*) filter (where c.closed_on is not null and c.first_visit_done) as first_visit_done,
    count(c.main_component) as cause_known,
    count(*) filter (where c.main_component = 'none') as no_part,
    count(c.job_id) filter (where c.model_family is null) as family_unknown,
    count(c.job_id) filter (where c.age_years is null) as age_unknown,
    count(*) filter (where c.complaint_kind in ('none', 'other')) as complaint_unknown
from months as m
left join calls as c using (month)
group by m.month
order by m.month
