-- One row per month with a share outside its interval.
select month
from month_figures
where first_visit_share not between first_visit_lower and first_visit_upper
    or no_part_share not between no_part_lower and no_part_upper
