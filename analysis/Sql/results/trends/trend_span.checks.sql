-- One row where the log ends more than a month before it begins.
select *
from trend_span
where last_month < first_month - 1
