-- One row per need of the month, no part and parts that nobody named among them, most calls first.
select need, calls
from month_needs
where month = $month::date
order by calls desc, need
