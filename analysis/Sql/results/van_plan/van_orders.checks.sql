-- One row per fault of van_orders: no pieces, or a total that is not pieces times price.
select supplier, part_number
from van_orders
where quantity < 1 or abs(total - quantity * unit_price) > 0.01
