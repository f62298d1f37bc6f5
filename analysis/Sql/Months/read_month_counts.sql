-- One row per month.
select
    month, calls, still_open, visits_known, first_visit_done, cause_known, no_part, family_unknown, age_unknown, complaint_unknown
from month_counts
order by month
