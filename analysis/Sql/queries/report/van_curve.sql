-- One row per budget: expected completion, mean over the vans.
select
    budget,
    avg(plan_completion) as plan_completion,
    avg(best_rule_completion) as best_rule_completion,
    count(*) as vans
from van_curve
where plan_completion is not null
group by budget
having count(*) = (select count(distinct van) from van_curve)
order by budget
