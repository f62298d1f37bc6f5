-- One row: jobs whose visit was planned, and the files they stand in.
select
    count(*) as jobs,
    coalesce(string_agg(distinct source_file, ', ' order by source_file), '') as files
from jobs
where visit_reason <> 'failure'
