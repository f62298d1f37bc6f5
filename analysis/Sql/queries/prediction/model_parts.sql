-- One row per model number and current part number fitted on closed jobs of that very model.
select
    jobs.model_number,
    job_parts.part_number,
    count(distinct jobs.job_id)::bigint as jobs
from job_parts
join jobs on jobs.job_id = job_parts.job_id
where jobs.model_number is not null and job_parts.part_number is not null and jobs.closed_on is not null
group by jobs.model_number, job_parts.part_number
order by jobs.model_number, jobs desc, job_parts.part_number
