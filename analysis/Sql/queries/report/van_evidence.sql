-- One row per way of stocking, replayed over all quarters and vans.
select policy, jobs, completion, completion_lower, completion_upper, money, gap_closed
from van_evidence
where quarter = 'all' and van = 'all'
order by case policy when 'plan' then 1 when 'most_used' then 2 when 'most_used_per_cost' then 3 when 'hindsight' then 4 else 5 end
