-- One row per closed job on one appliance before a day, the newest first; the appliance is one of the identifiers in
-- $units.
select
    jobs.unit_id,
    jobs.closed_on,
    jobs.main_component,
    jobs.complaint_kind,
    jobs.brand,
    jobs.model_number,
    jobs.made_from,
    jobs.made_to,
    jobs.age_basis,
    jobs.customer_kind
from jobs
where list_contains(string_split($units, ','), jobs.unit_id) and jobs.closed_on < $before::date
order by jobs.closed_on desc, jobs.job_id desc
