-- One row per van that is called after somebody: what all tables and pages call it.
select van_key, van
from van_labels
order by van_key
