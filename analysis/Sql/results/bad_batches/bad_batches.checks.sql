-- One row per bad batch that is none: too few cases, no more than expected, or more cases than calls.
select appliance_type, model_family, component, cases, calls, expected
from bad_batches
where cases < 3 or cases < expected or cases > calls or other_cases > other_calls or built_from > built_to or units_listed > units_out
