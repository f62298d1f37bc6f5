-- One row per month with its headline figures.
select month, calls, first_visit_share, first_visit_lower, first_visit_upper
from month_figures
order by month
