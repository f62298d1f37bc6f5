-- One row per job and possible build interval, with its probability.
-- materialize: view
with certain as (
    select appliance_type, age, count(*) as units
    from int_build_intervals
    where candidates = 1
    group by appliance_type, age
),
weighed as (
    select c.*, coalesce(p.units, 0) + 0.5 as chance
    from int_build_intervals as c
    left join certain as p on p.appliance_type is not distinct from c.appliance_type and p.age = c.age
    where c.candidates > 1
)
select place, job_id, unit_id, opened_on, made_from, made_to, candidates, 1.0::double as weight
from int_build_intervals
where candidates = 1
union all
select place, job_id, unit_id, opened_on, made_from, made_to, candidates, chance / sum(chance) over (partition by place)
from weighed
