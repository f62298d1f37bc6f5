-- One row per month whose parts exceed the whole.
select *
from month_counts
where still_open + end_not_told > calls
    or greatest(visits_known, cause_known, family_unknown, age_unknown, complaint_unknown) > calls
    or first_visit_done > visits_known
    or no_part > cause_known
