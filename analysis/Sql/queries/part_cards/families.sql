-- One row per family the part fits: listed, seen, or both.
select model_family, basis, times_seen, typical_quantity, last_seen
from fitments
where part_number = $number
order by times_seen desc, model_family
