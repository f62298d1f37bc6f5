-- One row per van and number on the label, at its newest count.
with newest as (
    select van, max(counted_on) as counted_on from van_counts group by van
)
select
    c.van,
    c.part_number,
    coalesce(c.fitted_number, c.part_number) as fitted_number,
    sum(c.on_hand)::integer as on_hand,
    max(c.counted_on) as counted_on
from van_counts as c
join newest as n on n.van = c.van and c.counted_on is not distinct from n.counted_on
where c.part_number is not null and c.on_hand > 0
group by c.van, c.part_number, coalesce(c.fitted_number, c.part_number)
order by c.van, c.part_number, fitted_number
