-- One row per order line of every file, with the number that its job goes by; none where it names several jobs.
-- materialize: view
select o.* replace (case when l.source_line is not null then l.job_id else o.job_id end as job_id)
from staged_part_orders as o
left join int_named_job_lines as l using (source_order, source_line)
