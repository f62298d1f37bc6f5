-- One row per van that is named after someone, where settings keep the shop's people by initials.
select van_key, van
from staged_van_labels
order by van_key
