-- One row per catalog number, with the key a typed number is compared by.
select part_key, part_number from int_catalog order by part_key, part_number
