-- One row per number on jobs, orders and van counts that stands for no part.
select distinct part_raw
from (
    select part_raw, part_number from job_parts
    union all select part_raw, part_number from part_orders
    union all select part_raw, part_number from van_counts
)
where part_number is null and regexp_replace(upper(part_raw), '[^A-Z0-9]', '', 'g') <> ''
order by part_raw
