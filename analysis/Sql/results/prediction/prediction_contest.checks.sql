-- One row per contender with impossible figures, and one where not exactly one ships.
select contender, log_loss, top_1, top_3
from prediction_contest
where log_loss < 0 or top_1 > top_3 or top_3 > top_5 or brier > 2 or temperature <= 0
union all
select 'ships: ' || count(*)::varchar as contender, null as log_loss, null as top_1, null as top_3
from prediction_contest
where ships
having count(*) <> 1 and (from prediction_contest select count(*)) > 0
