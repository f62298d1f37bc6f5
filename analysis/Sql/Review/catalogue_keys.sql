-- One row per catalogue number, with the key a typed number is compared by.
select part_key, part_number from catalogue order by part_key, part_number
