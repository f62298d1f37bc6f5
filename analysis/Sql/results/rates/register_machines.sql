-- One row: whose machines the register lists, by the calls about them, and whose
-- failures the curves from the job log alone rest on.
-- materialize: result
with calls as (
    select unit_id, customer_id, customer_kind
    from jobs
    where opened_on <= (select last_day from int_log_window)
),
kinds as (
    select
        u.unit_id,
        u.appliance_type,
        bool_or(c.customer_kind = 'contract') as contract,
        bool_or(c.customer_kind = 'household') as household
    from units as u
    left join calls as c using (unit_id)
    where u.registered
    group by u.unit_id, u.appliance_type
)
select
    count(*) as machines,
    count(*) filter (where contract) as contract,
    count(*) filter (where household and not coalesce(contract, false)) as household,
    count(*) filter (where not coalesce(contract, false) and not coalesce(household, false)) as kind_unknown,
    count(*) filter (where appliance_type is null) as type_unknown,
    case
        when count(*) = 0 then 'none'
        when count(*) filter (where contract) + count(*) filter (where household and not coalesce(contract, false)) = 0 then 'unknown'
        when count(*) filter (where household and not coalesce(contract, false)) * 20 <= count(*) filter (where contract) then 'contract'
        when count(*) filter (where contract) * 20 <= count(*) filter (where household and not coalesce(contract, false)) then 'household'
        else 'mixed'
    end as whose,
    case when (select bool_or(customer_kind = 'household') from calls) then 'household' else 'unknown' end as log_whose
from kinds
