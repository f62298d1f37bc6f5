-- One row per van: its plan in one line.
select van, budget, space, money_used, space_used, parts, pieces, jobs_per_year, completion, completion_counted, second_visits_avoided, bound_gap, answer, money_counted, booked_jobs, booked_finished
from van_summary
order by van
