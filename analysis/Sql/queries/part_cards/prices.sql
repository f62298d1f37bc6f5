-- One row per supplier and year: what the part cost.
select
    supplier,
    year(ordered_on)::integer as year,
    count(*) as lines,
    min(unit_cost) as lowest_cost,
    quantile_disc(unit_cost, 0.5) as median_cost,
    max(unit_cost) as highest_cost
from part_orders
where part_number = $number and unit_cost is not null
group by supplier, year(ordered_on)
order by supplier, year
