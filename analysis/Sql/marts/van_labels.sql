-- One row per van that is called after somebody, where settings keep the shop's people by initials.
select van_key, van
from staged_van_labels
order by van_key
