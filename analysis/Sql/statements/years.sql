-- One row per year that a table has rows of.
select distinct year("{day}") as year
from "{table}"
order by year
