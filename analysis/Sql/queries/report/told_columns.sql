-- One row per column of the job log that people fill in: how many jobs tell it, of how many.
with filled as (
    select columns(c -> not list_contains(
        [
            'job_id', 'opened_on', 'closed_on', 'closing_basis', 'unit_id', 'customer_id', 'model_number', 'model_family', 'model_basis', 'made_from',
            'made_to', 'age_years', 'age_least_years', 'age_most_years', 'age_chance', 'age_basis', 'complaint_kind', 'main_component',
            'first_visit_done', 'van_basis', 'source_file', 'source_line'
        ], c
    ))::varchar
    from (select * replace (case when coalesce(van_basis, 'named') = 'named' then van end as van) from jobs)
),
known as (
    select nullif(columns(*), 'unknown')
    from filled
),
counts as (
    select count(columns(*))
    from known
),
told as (
    unpivot counts on columns(*) into name column_name value jobs
)
select column_name, jobs, (select count(*) from jobs) as expected
from told
order by jobs desc, column_name
