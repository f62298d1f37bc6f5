-- One row: part lines for a job's true component; those written with another number than today's; resolved; resolved to a wrong part.
with judged as (
    select p.part_raw, p.part_number, coalesce(c.current_number, l.part_number) as true_number
    from job_parts as p
    join truth as t using (job_id)
    join lives as l on l.family = t.family and l.component = t.recorded_component
    left join parts as c on c.part_number = l.part_number
    where p.component = t.recorded_component or p.component is null
)
select
    count(*),
    count(*) filter (part_raw <> true_number),
    count(part_number),
    count(*) filter (part_number <> true_number)
from judged
