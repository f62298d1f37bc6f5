-- One row per month with more known cases than calls, or a share known beyond 1.
select appliance_type, component, model_family, month, calls, known
from trend_months
where known > calls or completeness < 0 or completeness > 1
