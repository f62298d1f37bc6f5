-- One row per part line that stays: with its job row, or as a line of its own whose job is in the log.
with loaded as (
    select kind, source_order, source_line
    from row_fates
    where fate = 'loaded' and kind in ('jobs', 'job_parts')
)
select p.*
from staged_job_parts as p
semi join (from loaded where kind = 'jobs') as j using (source_order, source_line)
where p.with_job_row
union all
select p.*
from staged_job_parts as p
semi join (from loaded where kind = 'job_parts') as l using (source_order, source_line)
semi join staged_jobs as j on j.job_id = p.job_id
where not p.with_job_row
