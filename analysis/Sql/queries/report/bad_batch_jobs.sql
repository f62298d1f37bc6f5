-- One row per job behind a bad batch, newest first.
with parts as (
    select job_id, string_agg(coalesce(fitted_number, part_number, part_raw), ', ' order by line) as parts, min(supplier) as supplier
    from job_parts
    group by job_id
)
select j.job_id, j.opened_on, coalesce(j.model_number, j.model_raw) as model, j.age_years, j.complaint_text, p.parts, p.supplier
from bad_batch_jobs as b
join jobs as j using (job_id)
left join parts as p using (job_id)
where b.appliance_type = $type and b.model_family = $family and b.component = $component
order by j.opened_on desc, j.job_id
