-- One row per current part number on the shop's shelf, at its newest count.
select
    part_number,
    sum(on_hand)::integer as on_hand,
    any_value(counted_on) as counted_on
from van_counts
where van is null
    and part_number is not null
    and counted_on is not distinct from (select max(counted_on) from van_counts where van is null)
group by part_number
order by part_number
