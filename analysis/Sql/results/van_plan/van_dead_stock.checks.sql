-- One row per fault of van_dead_stock: no piece, or a part that was used or bought within the year.
select van, part_number
from van_dead_stock
where quantity < 1 or money < 0 or days_unused < 365
