-- One row per test without its figures, or with a chance that is none.
select appliance_type, component, model_family, expected, p, q
from trend_tests
where expected < 0 or not p between 0 and 1 or q < p - 1e-12 or (annual_ratio is null) = (trend_missing is null)
