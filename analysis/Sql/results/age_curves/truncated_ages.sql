-- One row per unlisted appliance and component that failed in the time of the log: age at the first logged failure, and
-- the ages the appliance had when the log began and when it was closed, in days. Where calls tell household customers,
-- machines of contract customers are left out: they are used harder.
select
    f.component,
    u.appliance_type,
    u.model_family,
    u.unit_id,
    min(f.age_days) as age_days,
    u.log_entry_days as earliest_days,
    u.log_exit_days as latest_days
from unit_failures as f
join unit_ages as u using (unit_id)
where u.basis = 'units_seen' and f.age_days > 0
    and (u.left_out is null or u.left_out like 'never watched%')
    and f.age_days between u.log_entry_days and u.log_exit_days
    and not (
        (select log_whose from register_machines) = 'household'
        and u.unit_id in (select unit_id from jobs where customer_kind = 'contract' and unit_id is not null)
    )
group by all
order by f.component, u.appliance_type, u.model_family, age_days, earliest_days, latest_days, u.unit_id
