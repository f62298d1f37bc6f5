-- One row per part line whose job is in no log. It is rejected, because nobody can say what the part was fitted for.
select distinct
    p.source_order,
    p.source_file,
    p.source_line,
    'job_id' as field,
    'unknown_job' as reason_code,
    'No job ' || p.job_id || ' in any job log.' as message,
    'Add the log that holds this job, or mend the job number.' as suggestion
from staged_job_parts as p
anti join int_row_status as f using (source_order, source_line)
anti join staged_jobs as j on j.job_id = p.job_id
where not p.with_job_row
