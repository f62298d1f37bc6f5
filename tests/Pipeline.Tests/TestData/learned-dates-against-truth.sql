-- One row: jobs that a learned date code dates, those with the true build day inside the job's interval, and jobs with an age.
with learned as (
    select distinct lower(brand) as brand from date_codes where in_use
)
select
    count(*) filter (j.age_basis = 'date code') as dated,
    count(*) filter (j.age_basis = 'date code' and t.built_on::date between j.made_from and j.made_to) as inside,
    (select count(*) from jobs where age_years is not null) as aged
from jobs as j
join truth as t using (job_id)
where lower(j.brand) in (select brand from learned)
