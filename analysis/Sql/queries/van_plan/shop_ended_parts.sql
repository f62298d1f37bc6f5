-- One row per number that is no longer made and that nothing replaces.
select old_number, effective_on
from supersessions
where new_number is null
order by old_number, effective_on
