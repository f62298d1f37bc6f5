-- One row per job behind an alarm, newest first.
with parts as (
    select job_id, string_agg(coalesce(fitted_number, part_number, part_raw), ', ' order by line) as parts, min(supplier) as supplier
    from job_parts
    group by job_id
)
select j.job_id, j.opened_on, coalesce(j.model_number, j.model_raw) as model, j.age_years, j.complaint_text, p.parts, p.supplier
from trend_alarm_jobs as a
join jobs as j using (job_id)
left join parts as p using (job_id)
where a."month" = $month::date and a.kind = $kind and a.appliance_type = $type and a.component = $component and a.model_family = $family
order by j.opened_on desc, j.job_id
