-- One row per registered appliance that no age curve can use, with the reason.
-- materialize: result
select unit_id, appliance_type, model_family, left_out as reason
from unit_ages
where basis = 'register' and left_out is not null
order by unit_id
