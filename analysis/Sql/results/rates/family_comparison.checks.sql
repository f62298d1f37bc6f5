-- One row per cell whose q is below its p, whose ratio is missing although something is expected, or that stands out
-- without the evidence.
select basis, appliance_type, model_family, subject, observed, expected, p, q
from family_comparison
where q < p
    or expected < 0
    or (stands_out and (q is null or observed < 3))
    or (expected > 0) <> (ratio is not null)
