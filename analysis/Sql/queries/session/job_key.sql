-- One row per load whose job numbers do not tell its jobs by themselves: what is added, the counts, and a number of two jobs.
select k.way, k.numbers, k.unexplained, k.files, n.job_number, n.job_id
from int_job_key as k
left join int_job_numbers as n on n.job_id <> n.job_number
order by n.source_order, n.source_line
limit 1
