-- One row per age at which the shares of all components and of no failure do not add up to 1.
select appliance_type, age_years, sum(share_failed) + any_value(no_failure) as total
from component_incidence
group by appliance_type, age_years
having abs(total - 1) > 1e-9
