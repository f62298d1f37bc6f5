-- One row per part line of every file, with the number that its job goes by; one that names several jobs goes by none.
-- materialize: view
select
    p.* replace (
        case
            when p.with_job_row then coalesce(n.job_id, p.job_id)
            when l.source_line is not null then coalesce(l.job_id, p.job_id || '~?')
            else p.job_id
        end as job_id
    ),
    p.job_id as job_number
from staged_job_parts as p
left join int_job_numbers as n using (source_order, source_line)
left join int_named_job_lines as l using (source_order, source_line)
