-- One row per van that is named after someone: what all tables and pages call it.
select van_key, van
from van_labels
order by van_key
