-- One row per bad batch whose jobs are not its cases.
select b.appliance_type, b.model_family, b.component, b.cases, count(j.job_id) as jobs
from bad_batches as b
left join bad_batch_jobs as j using (appliance_type, model_family, component)
group by all
having count(j.job_id) <> b.cases
