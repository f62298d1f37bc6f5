-- One row: first month of the log and last month that is over, counted as year * 12 + month - 1.
select
    (year(first_day) * 12 + month(first_day) - 1)::integer as first_month,
    (year(last_day + 1) * 12 + month(last_day + 1) - 2)::integer as last_month
from int_log_window
