-- One row per catalog number that can be ordered, stocked or was fitted.
select
    part_number,
    current_number,
    description,
    component,
    price,
    size_class,
    coalesce(space_units, 1) as space_units,
    returnable_days,
    supplier
from parts
order by part_number
