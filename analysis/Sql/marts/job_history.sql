-- One row per job row that a newer export replaced.
select
    j.job_id,
    j.opened_on,
    j.closed_on,
    j.outcome,
    w.source_file as replaced_by_file,
    w.source_line as replaced_by_line,
    j.source_file,
    j.source_line
from int_numbered_jobs as j
semi join (from int_row_status where kind = 'jobs' and status = 'replaced') as f using (source_order, source_line)
join int_job_rows as w using (job_id)
order by j.job_id, j.source_order, j.source_line
