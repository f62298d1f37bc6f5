-- One row if there is not exactly one row.
select count(*) as basis_rows
from int_van_basis
having count(*) <> 1
