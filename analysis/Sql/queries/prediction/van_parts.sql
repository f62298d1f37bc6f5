-- One row per van and current part number it holds.
select
    part_number,
    van,
    sum(on_hand)::integer as on_hand,
    max(counted_on) as counted_on
from van_counts
where van is not null and part_number is not null and on_hand > 0
group by part_number, van
order by part_number, van
