-- One row per appliance type and number of calls: units that called so often.
select
    appliance_type,
    visits,
    count(*) as units
from (
    select coalesce(min(appliance_type), 'unknown') as appliance_type, count(*)::integer as visits
    from jobs
    where unit_id is not null and opened_on <= (select last_day from int_log_window)
    group by unit_id
)
group by appliance_type, visits
order by appliance_type, visits
