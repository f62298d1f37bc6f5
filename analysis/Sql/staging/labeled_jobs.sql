-- One row per row of staged_jobs, with labels of the vans that are named after someone.
create or replace view staged_jobs as
select s.* replace (coalesce(l.van, s.van) as van)
from staged_jobs_by_key as s
left join staged_van_labels as l on l.van_key = s.van
