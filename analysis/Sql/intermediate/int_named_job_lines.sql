-- One row per part line or order line that stands apart and names a number which several jobs bear: the job that it is
-- for, or null if nothing says which.
with jobs_of_number as (
    select job_number, job_id, min(opened_on) as opened_on
    from int_job_numbers
    group by job_number, job_id
),
lines as (
    select source_order, source_file, source_line, job_id as job_number, updated_on::date as day_on
    from staged_job_parts
    where not with_job_row
    union all
    select source_order, source_file, source_line, job_id, ordered_on
    from staged_part_orders
    where job_id is not null
),
-- a line is written some days after the call; the year in its file's name is the next best
matched as (
    select distinct
        l.source_order,
        l.source_line,
        j.job_id,
        case
            when l.day_on >= j.opened_on - 1 then l.day_on - j.opened_on
            when l.day_on < j.opened_on then 100000 + (j.opened_on - l.day_on)
            when year(j.opened_on)::varchar = regexp_extract(l.source_file, '(?:19|20)[0-9][0-9]') then 0
            else 1
        end as distance
    from lines as l
    join jobs_of_number as j using (job_number)
),
closest as (
    from matched
    qualify distance = min(distance) over (partition by source_order, source_line)
)
select source_order, source_line, case when count(distinct job_id) = 1 then min(job_id) end as job_id
from closest
group by source_order, source_line
