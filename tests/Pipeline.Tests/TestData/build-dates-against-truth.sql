-- One row: jobs whose serial was read, those with the true build day inside a candidate, inside the job's interval, and those aged by code alone whose likeliest date is right.
with judged as (
    select
        b.job_id,
        count(*) as candidates,
        bool_or(t.built_on::date between b.made_from and b.made_to) as held,
        sum(b.weight) filter (t.built_on::date between b.made_from and b.made_to) as chance
    from build_dates as b
    join truth as t using (job_id)
    group by b.job_id
)
select
    count(*) as coded,
    count(*) filter (held) as held,
    count(*) filter (j.made_from <= t.built_on::date and j.made_to >= t.built_on::date) as inside,
    count(*) filter (candidates > 1) as several,
    coalesce(sum(chance) filter (candidates > 1), 0) as told
from judged
join jobs as j using (job_id)
join truth as t using (job_id)
