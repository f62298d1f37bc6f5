-- One row per van that the shop's settings list, or else its counts of stock: its place by name.
with listed as (
    select van from van_crews
    union
    select van from staged_van_counts where van is not null and not exists (from van_crews)
)
select van, row_number() over (order by van) as place
from listed
