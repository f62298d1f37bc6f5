-- One row per van, and one for the shelf: pieces of the part at the newest count, old numbers of it included.
select coalesce(van, 'shelf') as van, sum(on_hand)::bigint as on_hand, max(counted_on) as counted_on
from van_counts
where part_number = $number
group by all
order by van
