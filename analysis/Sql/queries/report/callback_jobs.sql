-- One row per callback called in the month.
select c.job_id, c.opened_on, c.earlier_job_id, c.days_after, j.complaint_text, c.earlier_component, c.component
from callbacks as c
join jobs as j using (job_id)
where date_trunc('month', c.opened_on) = $month::date
order by c.opened_on, c.job_id
