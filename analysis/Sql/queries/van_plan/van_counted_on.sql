-- One row per counted van: the day of its newest count; null: the count has no day.
select van, max(counted_on) as counted_on
from van_counts
where van is not null
group by van
order by van
