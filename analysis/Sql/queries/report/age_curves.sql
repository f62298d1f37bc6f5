-- One row per curve that can be drawn: those of whole types from the register first, then from the log alone; and the
-- family that differs most, if it does more than chance explains in so many families compared (Bonferroni).
with drawn as (
    from age_curve_summary
    where curve_missing is null and failures >= $least
),
whole as (
    from drawn
    where model_family = 'all'
    qualify row_number() over (partition by basis order by failures desc, appliance_type, component) <= case basis when 'register' then 4 else 2 end
),
compared as (
    select f.*, f.condition is not distinct from w.condition as fits, f.others_p * count(*) over () as adjusted_p
    from drawn as f
    join whole as w using (appliance_type, component, basis)
    where f.model_family <> 'all' and f.others_p is not null
),
apart as (
    select * exclude (fits, adjusted_p)
    from compared
    where fits and adjusted_p < 0.05
    qualify row_number() over (partition by appliance_type, component, basis order by others_p, model_family) = 1
)
select
    appliance_type, component, model_family, basis, condition, units, failures, median_years, median_lower, median_upper,
    coalesce(median_missing, 'not reached') as median_missing, nature,
    others_ratio, others_lower, others_upper
from (from whole union all from apart) as curves
order by basis desc, appliance_type, component, model_family <> 'all', model_family
