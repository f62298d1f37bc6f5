-- One row per part description that tells no component, most frequent first.
with described as (
    select lower(trim(description)) as description, part_raw from int_job_part_rows where component is null and description is not null
    union all
    select lower(trim(description)), part_raw from staged_part_orders where component is null and description is not null
    union all
    select lower(trim(description)), part_raw from staged_parts where component is null and description is not null
)
select d.description, count(*) as times, min(d.part_raw) as example
from described as d
anti join int_answered_components as r using (description)
where d.description <> ''
group by d.description
order by times desc, d.description
