-- One row per row of a table within one year.
select *
from "{table}"
where "{day}" between make_date("{year}", 1, 1) and make_date("{year}", 12, 31)
