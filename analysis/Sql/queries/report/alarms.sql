-- One row per rise told in the month that stands by itself; those least likely by chance first.
select
    kind, appliance_type, component, model_family, observed, expected, ratio, ratio_lower, ratio_upper, p, q, run_length, since,
    largest_customer_cases, survives_customer, largest_technician, survives_technician, largest_model, survives_model,
    built_from, built_to, built_cases, built_known, jobs
from trend_alarms
where "month" = $month::date and part_of is null
order by kind <> 'month', q, ratio desc, appliance_type, component, model_family
