-- One row per catalog number, with the key a typed number is compared by.
select part_key as key, part_number as number
from int_catalog
order by key, number
