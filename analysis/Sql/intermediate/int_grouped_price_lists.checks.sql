-- One row per price list that is there twice or has no number.
select source_order, 'is there twice' as fault
from int_grouped_price_lists
group by source_order
having count(*) > 1
union all
select source_order, 'has no number'
from int_grouped_price_lists
where source_order is null
