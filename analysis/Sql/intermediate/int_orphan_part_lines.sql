-- One row per part line whose job is in no log. It is rejected, because nobody can say what the part was fitted for.
select distinct
    p.source_order,
    p.source_file,
    p.source_line,
    'job_id' as field,
    'unknown_job' as reason_code,
    case when p.job_id like '%~?'
        then 'Several jobs bear the number ' || p.job_number || ', and the line does not say which it is for.'
        else 'No job ' || p.job_number || ' in any job log.' end as message,
    case when p.job_id like '%~?'
        then 'Add the day to the line, or number the jobs through.'
        else 'Add the log that holds this job, or mend the job number.' end as suggestion
from int_numbered_job_parts as p
anti join int_row_status as f using (source_order, source_line)
anti join int_numbered_jobs as j on j.job_id = p.job_id
where not p.with_job_row
