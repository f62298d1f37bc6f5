-- One row per month and family.
select month, model_family, appliance_type, brand, calls, family_known, top_component
from month_family_counts
order by month, calls desc, model_family
