-- One row per number the shop knows: the catalog's and the suppliers' own.
select compact_key(part_number) as number_key, part_number as number from parts
union
select compact_key(alias), alias from part_aliases
order by number_key, number
