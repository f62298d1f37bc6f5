-- One row per rule that stands twice, or is in use without a reason.
select brand || ' ' || serial_form as rule, 'stands twice' as fault
from date_codes
group by brand, serial_form, date_code
having count(*) > 1
union all
select brand || ' ' || serial_form, 'in use but ' || basis
from date_codes
where in_use <> (basis in ('proven', 'approved'))
