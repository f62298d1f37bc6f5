-- One line per year and outcome of jobs, and per year and component of part lines: rows, and minutes or pieces.
select concat_ws('|', 'jobs', year(opened_on), outcome, count(*), coalesce(sum(labour_minutes), 0)::bigint) as line
from jobs
group by year(opened_on), outcome
union all
select concat_ws('|', 'lines', year(j.opened_on), coalesce(p.component, '-'), count(*), sum(p.quantity)::bigint)
from job_parts as p
join jobs as j using (job_id)
group by year(j.opened_on), p.component
