-- One row: jobs whose visit was planned, and the files they stand in, the first three by name.
with planned as (
    select source_file, count(*) as jobs from jobs where visit_reason <> 'failure' group by source_file
)
select
    coalesce(sum(jobs), 0)::bigint as jobs,
    coalesce(string_agg(source_file, ', ' order by source_file) filter (place <= 3), '')
        || case when count(*) > 3 then ' and ' || count(*) - 3 || ' more' else '' end as files
from (select *, row_number() over (order by source_file) as place from planned)
