-- One row per van: pieces of the part at the newest count, old numbers of it included.
select van, sum(on_hand)::bigint as on_hand, max(counted_on) as counted_on
from van_counts
where part_number = $number
group by van
order by van
